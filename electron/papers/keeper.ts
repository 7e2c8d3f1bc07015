import type { Ledger } from '../../db/file/ledger.ts'
import { nonePassed } from '../../db/rows/kept-papers.ts'
import { keepNext } from './frozen.ts'

/** How long nothing must have been asked for before a paper is drawn: people go first. */
const quietMs = 400

/** Keeps the papers of an open ledger between other work. */
export interface PaperKeeper {
  /** Something was asked for, and may have been issued or handed out. */
  wake(): void
  /** Nothing more is drawn; what is left is drawn when the ledger is next opened. */
  stop(): void
}

/** A keeper that begins with what an earlier run froze and did not come to draw, one paper each time nobody asks for anything. */
export function paperKeeper(ledger: Ledger): PaperKeeper {
  let stopped = false
  let passed = nonePassed
  let timer: NodeJS.Timeout | undefined
  let work = Promise.resolve()
  const keepOne = async () => {
    if (stopped) return
    const next = await keepNext(ledger, passed, () => stopped)
    if (!next) return
    passed = next
    wake()
  }
  const wake = () => {
    clearTimeout(timer)
    if (!stopped) timer = setTimeout(begin, quietMs).unref()
  }
  const begin = () => {
    work = work.then(keepOne).catch(console.error)
  }
  const stop = () => {
    stopped = true
    clearTimeout(timer)
  }
  wake()
  return { wake, stop }
}
