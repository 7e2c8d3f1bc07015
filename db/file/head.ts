import { createHash } from 'node:crypto'
import { closeSync, fsyncSync, mkdirSync, openSync, readFileSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { folderBeside } from './files-beside.ts'

/** How far a ledger's day book has come: its last row, by number, hash and time. Empty while nothing has been entered. */
export interface Tail {
  readonly count: number
  readonly hash: string
  readonly at: string
}

/**
 * What is known beside a ledger of what stands in it. It is written after each act, so that entries which were acknowledged and are
 * gone, with a log that was lost or a file that was replaced, are noticed at the next opening.
 */
export interface Head extends Tail {
  readonly identity: string
  readonly opening: string
  /** The opening that is being begun: from here to the first act the file may carry either. */
  readonly next?: string
}

/** Two places in turn, each written whole: a write cut off by a power failure leaves the other. */
const slotBytes = 512
const slots = 2

const checkOf = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 16)

/** One slot's bytes: a turn that rises, what is known, and a check over both; filled up with spaces. */
function slotOf(turn: number, head: Head): Buffer {
  const text = JSON.stringify({ turn, ...head })
  return Buffer.from(`${checkOf(text)} ${text}`.padEnd(slotBytes - 1).concat('\n'))
}

function readSlot(bytes: Buffer): (Head & { turn: number }) | undefined {
  const [check, text] = [bytes.toString('utf8', 0, 16), bytes.toString('utf8', 17).trim()]
  return text !== '' && checkOf(text) === check ? (JSON.parse(text) as Head & { turn: number }) : undefined
}

/** Where a ledger's head stands: in the folder of its papers, which is copied along with the ledger. */
export const headPath = (ledgerFile: string): string =>
  join(folderBeside(ledgerFile, 'papers'), 'ledger.head')

/** The newest of the two slots that is whole, as it was written; undefined where there is none. */
function newestSlot(path: string): (Head & { turn: number }) | undefined {
  try {
    const bytes = readFileSync(path)
    const read = [0, 1].map(slot => readSlot(bytes.subarray(slot * slotBytes, (slot + 1) * slotBytes)))
    return read.filter(one => one !== undefined).toSorted((a, b) => b.turn - a.turn)[0]
  } catch {
    return undefined
  }
}

/** What is known beside a ledger; undefined where nothing is, or nothing that can be read. */
export const readHead = (ledgerFile: string): Head | undefined => newestSlot(headPath(ledgerFile))

/** A head that is kept while its ledger is open. */
export interface KeptHead {
  /** Writes what is known now. What cannot be written is left: the head then says less than there is, never more. */
  keep(head: Head, how?: { readonly synced: boolean }): void
  close(): void
}

/** Opens a ledger's head for writing, making its folder and the file where they are missing. */
export function openHead(ledgerFile: string): KeptHead {
  const path = headPath(ledgerFile)
  let turn = newestSlot(path)?.turn ?? 0
  let handle: number | undefined
  try {
    mkdirSync(folderBeside(ledgerFile, 'papers'), { recursive: true, mode: 0o700 })
    handle = openForWriting(path)
  } catch {
    // A ledger beside which nothing can be written is still a ledger.
  }
  return {
    keep(head, { synced } = { synced: false }) {
      if (handle === undefined) return
      turn += 1
      try {
        writeSync(handle, slotOf(turn, head), 0, slotBytes, (turn % slots) * slotBytes)
        if (synced) fsyncSync(handle)
      } catch {
        // As above.
      }
    },
    close() {
      if (handle !== undefined) closeSync(handle)
      handle = undefined
    },
  }
}

/** Opens without emptying what is there. */
function openForWriting(path: string): number {
  try {
    return openSync(path, 'r+', 0o600)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error
    return openSync(path, 'wx+', 0o600)
  }
}
