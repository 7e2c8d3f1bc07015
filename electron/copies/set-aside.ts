import {
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join, parse } from 'node:path'
import { syncPath } from '../../db/file/backup.ts'
import { namesake } from '../../db/file/copy-name.ts'
import { folderBeside, keptBeside, pathBeside } from '../../db/file/files-beside.ts'
import { lookInto, type NeededFile } from '../../db/file/look.ts'
import { unfinishedEnd } from '../../db/file/unfinished.ts'
import { lastCopyPath } from './backups.ts'

/**
 * A ledger's place being given to another ledger, written down before anything is moved: a program killed on the way goes on from here
 * at its next start.
 */
interface Change {
  /** The folder that everything of the present ledger is moved into; it has the day in its name. */
  readonly aside: string
  /** Whether a ledger takes the place, or it stays empty for a new one. */
  readonly comes: boolean
  /** Ledger files beside which photographs and papers of the one that comes are looked for; they need not be there themselves. */
  readonly from: readonly string[]
}

const planOf = (ledger: string) => `${ledger}.change`
const incomingOf = (ledger: string) => `${ledger}.incoming${unfinishedEnd}`

/** Everything that belongs to the ledger at that place. */
const belongings = (ledger: string): string[] => [
  ...['', '-wal', '-shm'].map(end => `${ledger}${end}`),
  lastCopyPath(ledger),
  ...keptBeside.map(what => folderBeside(ledger, what)),
]

function moveAside(path: string, aside: string): void {
  const to = join(aside, basename(path))
  if (existsSync(path) && !existsSync(to)) renameSync(path, to)
}

/** The bytes under another name, without a second copy where the disk can do that. */
function linkOrCopy(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true, mode: 0o700 })
  try {
    linkSync(from, to)
  } catch {
    copyFileSync(from, `${to}${unfinishedEnd}`)
    renameSync(`${to}${unfinishedEnd}`, to)
  }
}

/** The ledger's name in a folder of its copies, beside which their photographs and papers stand. */
export const namesakeIn = (folder: string, ledger: string): string => join(folder, basename(ledger))

/** Ledger files beside which the files of a copy may stand: the ledger's name in the folder of its backups, the one in the copy's name, or its own. */
export const besideCopy = (ledger: string, copy: string): string[] => [
  ...new Set([namesakeIn(dirname(copy), ledger), namesake(copy), copy]),
]

/** Where the file may stand: in the folders of the ledger that was moved aside, or beside the copy. */
const sources = (ledger: string, { what, hash, ending }: NeededFile, { aside, from }: Change): string[] =>
  [join(aside, basename(ledger)), ...from].map(beside => pathBeside(beside, what, hash, ending))

/** Puts photographs and papers of the ledger beside it, those that are to be had. */
function bringFiles(ledger: string, change: Change): void {
  for (const file of lookInto(ledger).files) {
    const to = pathBeside(ledger, file.what, file.hash, file.ending)
    const found = sources(ledger, file, change).find(path => existsSync(path))
    if (found && !existsSync(to)) linkOrCopy(found, to)
  }
}

function carryOut(ledger: string, change: Change): void {
  const incoming = incomingOf(ledger)
  mkdirSync(change.aside, { recursive: true, mode: 0o700 })
  // Once what comes has its place, what stands there is no longer the ledger that goes.
  if (!change.comes || existsSync(incoming))
    for (const path of belongings(ledger)) moveAside(path, change.aside)
  if (existsSync(incoming)) renameSync(incoming, ledger)
  syncPath(dirname(ledger))
  if (change.comes) bringFiles(ledger, change)
  rmSync(planOf(ledger))
  syncPath(dirname(ledger))
}

function writeSynced(path: string, text: string): void {
  writeFileSync(`${path}${unfinishedEnd}`, text, { mode: 0o600 })
  syncPath(`${path}${unfinishedEnd}`)
  renameSync(`${path}${unfinishedEnd}`, path)
  syncPath(dirname(path))
}

// Colons may not stand in a file's name everywhere.
const asideOf = (ledger: string, at: string) =>
  join(dirname(ledger), `${parse(ledger).name} set aside ${at.replaceAll(':', '')}`)

/** Goes on with a change that a killed program began; nothing where there is none. To be called before the ledger is opened. */
export function finishChange(ledger: string): void {
  if (!existsSync(planOf(ledger))) return
  carryOut(ledger, JSON.parse(readFileSync(planOf(ledger), 'utf8')) as Change)
}

/**
 * Gives the place of a closed ledger to a copy; the present file, its log, photographs and papers are moved into a folder of their own
 * beside it, whose path is returned. Killed at any moment, the place has the one ledger whole or the other at the next start.
 */
export function giveItsPlace(ledger: string, copy: string, at: string): string {
  const aside = asideOf(ledger, at)
  const incoming = incomingOf(ledger)
  rmSync(incoming, { force: true })
  copyFileSync(copy, incoming)
  const handle = openSync(incoming, 'r+')
  fsyncSync(handle)
  closeSync(handle)
  const change: Change = { aside, comes: true, from: besideCopy(ledger, copy) }
  writeSynced(planOf(ledger), JSON.stringify(change))
  carryOut(ledger, change)
  return aside
}

/** Makes room for a new ledger: everything of the present one is moved into a folder of its own beside it, whose path is returned. */
export function setAside(ledger: string, at: string): string {
  const aside = asideOf(ledger, at)
  const change: Change = { aside, comes: false, from: [] }
  writeSynced(planOf(ledger), JSON.stringify(change))
  carryOut(ledger, change)
  return aside
}

/** Moves what lies beside a ledger and is not its own, a log or a folder, into a folder of its own beside it. */
export function setAsideForeign(ledger: string, paths: readonly string[], at: string): string {
  const aside = asideOf(ledger, at)
  mkdirSync(aside, { recursive: true, mode: 0o700 })
  for (const path of paths) moveAside(path, aside)
  syncPath(dirname(ledger))
  return aside
}
