import type { Ledger } from '../../db/ledger.ts'
import { keepPapers } from './issued.ts'

/** How long nothing must have been done before papers are drawn: people go first. */
const quietMs = 400

/** Keeps the papers of an open ledger between other work. */
export interface PaperKeeper {
  /** Something may have been issued. */
  wake(): void
  /** Nothing more is drawn; what is left is drawn when the ledger is next opened. */
  stop(): void
}

/** A keeper that begins with what an earlier run issued and did not come to draw. */
export function paperKeeper(ledger: Ledger): PaperKeeper {
  let stopped = false
  let last = 0
  let timer: NodeJS.Timeout | undefined
  let work = Promise.resolve()
  const keep = async () => {
    last = await keepPapers(ledger, last, () => stopped)
  }
  const wake = () => {
    clearTimeout(timer)
    if (stopped) return
    timer = setTimeout(() => {
      work = work.then(keep).catch(console.error)
    }, quietMs).unref()
  }
  const stop = () => {
    stopped = true
    clearTimeout(timer)
  }
  wake()
  return { wake, stop }
}
