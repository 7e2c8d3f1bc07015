import { createHash } from 'node:crypto'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { folderBeside, keptBeside } from '../../db/file/files-beside.ts'
import { type Ledger, openLedger } from '../../db/file/ledger.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import type { Outside } from '../../db/file/outside.ts'
import { lastEntryAt } from '../../db/rows/day-book.ts'
import { places } from '../places.ts'
import { demoDayFile, demoLedger, stagedClock } from './demo-shop.ts'

/** What the played demonstration depends on: its day file, the ledger's shape, and the program as it was built. */
function fingerprint(): string {
  const hash = createHash('sha256')
  const migrations = readdirSync(places.migrations).map(name => join(places.migrations, name))
  for (const file of [demoDayFile(), places.host, places.main, ...migrations])
    if (existsSync(file)) hash.update(readFileSync(file))
  return hash.digest('hex').slice(0, 16)
}

const nameOf = (folder: string) => join(folder, 'demonstration.countwheel')

/** Copies a closed ledger with its photographs and papers. */
function copyLedger(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true, mode: 0o700 })
  cpSync(from, to)
  for (const what of keptBeside)
    if (existsSync(folderBeside(from, what)))
      cpSync(folderBeside(from, what), folderBeside(to, what), { recursive: true })
}

/** Plays the demonstration once, whole or not at all, into the folder. Another start may have been quicker. */
async function prepare(folder: string, random: Outside['random']): Promise<void> {
  const unfinished = `${folder}.${process.pid}.unfinished`
  rmSync(unfinished, { recursive: true, force: true })
  const { ledger } = await demoLedger({ file: nameOf(unfinished), migrations: places.migrations, random })
  ledger.close()
  try {
    renameSync(unfinished, folder)
  } catch {
    rmSync(unfinished, { recursive: true, force: true })
  }
}

/** Those that another program played are of no use any more. */
function dropOthers(folder: string): void {
  for (const name of readdirSync(dirname(folder)))
    if (!folder.endsWith(name) && !name.endsWith('.unfinished'))
      rmSync(join(dirname(folder), name), { recursive: true, force: true })
}

/** The folder of the played demonstration; undefined where the program's own folder cannot be written to. */
async function preparedFolder(random: Outside['random']): Promise<string | undefined> {
  const folder = join(places.root, 'dist', 'demonstration', fingerprint())
  if (existsSync(folder)) return folder
  try {
    await prepare(folder, random)
    dropOthers(folder)
    return folder
  } catch (error) {
    if (error instanceof LedgerRefused) return undefined
    throw error
  }
}

/**
 * The demonstration shop in a fresh ledger at `file`, whose clock walks on from the last act's time: played when this very program is first
 * asked for it, and copied from then on.
 */
export async function freshDemo(
  file: string,
  random: Outside['random'],
): Promise<{ readonly ledger: Ledger; readonly now: () => string }> {
  const folder = await preparedFolder(random)
  if (folder === undefined) return demoLedger({ file, migrations: places.migrations, random })
  copyLedger(nameOf(folder), file)
  const clock = stagedClock()
  const ledger = openLedger(file, { migrations: places.migrations, now: clock.now, random })
  clock.set(lastEntryAt(ledger.read) ?? clock.now())
  clock.letGo()
  return { ledger, now: clock.now }
}
