import { mkdirSync, rmSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { start } from '../../core/words/en/start.ts'
import { folderBeside, keptBeside } from '../../db/file/files-beside.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import { sweepUnfinished } from '../../db/file/unfinished.ts'
import { backupFolder } from '../copies/backups.ts'
import { demoLedger } from '../day/demo-shop.ts'
import { type PaperKeeper, paperKeeper } from '../papers/keeper.ts'
import { demoLedgerFile, places, usualLedger } from '../places.ts'
import { createHandler } from '../server/handler.ts'
import type { Handle } from '../server/hosts/limits.ts'
import { holdLedger } from './hold.ts'
import { outside } from './outside.ts'

/** What a person asks to have opened. */
export interface ShopChoice {
  /** The ledger's file; the usual one, or the usual demonstration, where not given. */
  readonly ledger?: string | undefined
  /** Play the demonstration shop into a fresh ledger. */
  readonly demo: boolean
}

/** A shop whose ledger is open in this process. */
export interface Shop {
  readonly file: string
  readonly handle: Handle
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
    rmSync(folderBeside(demoLedgerFile(), what), { recursive: true, force: true })
}

/** The folder is there, or the ledger is refused: only its user may look into a folder made here. */
function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
  } catch {
    throw new LedgerRefused('ledger.noAccess')
  }
}

/** An open ledger and the clock it is kept by: the computer's, or the demonstration's last minute. */
async function openedLedger(choice: ShopChoice) {
  const file = ledgerFile(choice)
  if (choice.demo) {
    console.error(start.playing)
    return demoLedger({ file, migrations: places.migrations, random: outside.random })
  }
  return { ledger: openLedger(file, { migrations: places.migrations, ...outside }), now: outside.now }
}

/** The handler, between whose answers the papers that were issued are drawn and kept. */
const wakingKeeper =
  (handle: Handle, keeper: PaperKeeper): Handle =>
  async request => {
    const answer = await handle(request)
    keeper.wake()
    return answer
  }

/**
 * Opens the shop that `choice` names and holds its file. `onAsked` answers another process that wants the same
 * ledger (see `holdLedger`). Throws `LedgerHeld` when another process has it, `LedgerRefused` when the file cannot
 * be taken as it is.
 */
export async function openShop(choice: ShopChoice, onAsked: () => string): Promise<Shop> {
  const file = ledgerFile(choice)
  makeFolder(dirname(resolve(file)))
  const hold = await holdLedger(file, onAsked)
  try {
    makeRoom(choice)
    const { ledger, now } = await openedLedger(choice)
    const keeper = paperKeeper(ledger)
    // Nobody waits for this, so the first page goes before it.
    const sweep = setTimeout(() => sweepUnfinished(file, backupFolder(file)), 1000).unref()
    const close = () => {
      clearTimeout(sweep)
      keeper.stop()
      ledger.close()
      hold.release()
    }
    return { file, handle: wakingKeeper(createHandler({ ledger, now, pages: places.pages }), keeper), close }
  } catch (error) {
    hold.release()
    throw error
  }
}
