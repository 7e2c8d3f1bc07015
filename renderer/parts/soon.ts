/** Writing that follows what changes. */
export interface Soon {
  /** Something changed: it is written before long, however much more changes until then. */
  changed(): void
  /** Writes at once what is not written yet. */
  flush(): void
  /** Writes nothing more; settles once the write that is on its way has ended. */
  close(): Promise<void>
  /** Goes on with what is not written yet. */
  reopen(): void
}

/** Calls `write` at most `pauseMs` after the first change that is not written, one write at a time, so that none overtakes another. */
export function soon(write: () => Promise<unknown>, pauseMs: number): Soon {
  let timer: ReturnType<typeof setTimeout> | undefined
  let running: Promise<unknown> | undefined
  let unwritten = false
  let open = true
  const stop = () => {
    clearTimeout(timer)
    timer = undefined
  }
  const wait = () => {
    if (open && unwritten && timer === undefined && running === undefined) timer = setTimeout(now, pauseMs)
  }
  const now = () => {
    stop()
    unwritten = false
    const mine = write().finally(() => {
      if (running === mine) running = undefined
      wait()
    })
    running = mine
  }
  return {
    changed: () => {
      unwritten = true
      wait()
    },
    flush: () => {
      if (open && unwritten) now()
    },
    close: async () => {
      open = false
      stop()
      await running
    },
    reopen: () => {
      open = true
      wait()
    },
  }
}
