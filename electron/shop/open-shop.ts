import { mkdirSync, rmSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { folderBeside, keptBeside } from '../../db/file/files-beside.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import { backupFolder } from '../copies/backups.ts'
import { namesakeIn } from '../copies/set-aside.ts'
import { demoLedgerFile, usualLedger } from '../places.ts'
import type { Handle } from '../server/hosts/limits.ts'
import { openDesk } from './desk.ts'
import { holdLedger } from './hold.ts'
import { ownOnly } from './own-only.ts'

/** What a person asks to have opened. */
export interface ShopChoice {
  /** The ledger's file; the usual one, or the usual demonstration, where not given. */
  readonly ledger?: string | undefined
  /** Play the demonstration shop into a fresh ledger. */
  readonly demo: boolean
}

/** A shop whose ledger is in this process's hands: open, or waiting for a decision that its pages ask for. */
export interface Shop {
  readonly file: string
  readonly handle: Handle
  /** Makes the last copy before closing, where an entry stands in none; it never rejects. */
  lastCopy(): Promise<void>
  /** Closes the ledger file cleanly and gives up the hold on it. */
  close(): void
}

/** The file that a choice means. */
export const ledgerFile = ({ ledger, demo }: ShopChoice): string =>
  ledger ?? (demo ? demoLedgerFile() : usualLedger())

/** The usual demonstration of an earlier start makes room; a ledger that a person named is never touched. */
function makeRoom({ ledger, demo }: ShopChoice): void {
  if (!demo || ledger) return
  for (const end of ['', '-wal', '-shm']) rmSync(`${demoLedgerFile()}${end}`, { force: true })
  for (const what of keptBeside)
    for (const file of [demoLedgerFile(), namesakeIn(backupFolder(demoLedgerFile()), demoLedgerFile())])
      rmSync(folderBeside(file, what), { recursive: true, force: true })
}

/** The folder is there, or the ledger is refused: only its user may look into a folder made here. */
function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
  } catch {
    throw new LedgerRefused('ledger.noAccess')
  }
}

/**
 * Opens the shop that `choice` names and holds its file. `onAsked` answers another process that wants the same
 * ledger (see `holdLedger`). Throws `LedgerHeld` when another process has it, `LedgerRefused` when the file cannot
 * be taken as it is; where the pages can ask what is to be done about it (`asks`), they do.
 */
export async function openShop(choice: ShopChoice, onAsked: () => string, asks = false): Promise<Shop> {
  const file = ledgerFile(choice)
  makeFolder(dirname(resolve(file)))
  ownOnly(file)
  const hold = await holdLedger(file, onAsked)
  try {
    makeRoom(choice)
    const desk = await openDesk({ file, demo: choice.demo, asks })
    const close = () => {
      desk.close()
      hold.release()
    }
    return { file, handle: desk.handle, lastCopy: desk.lastCopy, close }
  } catch (error) {
    hold.release()
    throw error
  }
}
