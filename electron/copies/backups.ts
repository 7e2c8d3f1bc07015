import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs'
import { basename, dirname, join, parse } from 'node:path'
import type { Ledger } from '../../db/file/ledger.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import { refuse } from '../../db/rows/refusal.ts'
import { copyBeside } from './copies-beside.ts'

/** How many backups of a ledger are kept; writing one more takes the oldest away. */
export const backupsKept = 30

/** One backup of a ledger. */
export interface Backup {
  /** The file's name inside the folder. */
  readonly file: string
  /** The instant it was written, ISO UTC with milliseconds. */
  readonly at: string
  readonly kilobytes: number
}

/** The folder of backups beside the ledger. */
export const backupFolder = (ledger: string): string => join(dirname(ledger), 'backups')

// Colons may not stand in a file's name everywhere.
const namedAt = (at: string) => at.replaceAll(':', '')
const stamped = /^(\d{4}-\d{2}-\d{2}T\d{2})(\d{2})(\d{2}\.\d{3}Z)$/

/** The name of a ledger's backup: its own name and the instant, `shop 2027-03-01T092000.000Z.countwheel`. */
function backupName(ledger: string, at: string): string {
  const { name, ext } = parse(ledger)
  return `${name} ${namedAt(at)}${ext}`
}

/** The instant in a backup's name, or nothing where the file is no backup of that ledger. */
function instantIn(file: string, ledger: string): string | undefined {
  const { name, ext } = parse(ledger)
  if (!file.startsWith(`${name} `) || !file.endsWith(ext)) return undefined
  const [, hour, minute, second] = stamped.exec(file.slice(name.length + 1, file.length - ext.length)) ?? []
  return hour && `${hour}:${minute}:${second}`
}

const kilobytesOf = (path: string): number => Math.ceil(statSync(path).size / 1024)

const notThere = new Set(['ENOENT', 'ENOTDIR', 'EACCES'])

/** The names in the folder; none where it is not there or may not be looked into. */
function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
  } catch (error) {
    if (notThere.has((error as NodeJS.ErrnoException).code ?? '')) return []
    throw error
  }
}

/** The backups of the ledger at that path, the newest first. */
export function backupsOf(ledger: string): Backup[] {
  const folder = backupFolder(ledger)
  return namesIn(folder)
    .flatMap(file => {
      const at = instantIn(file, ledger)
      return at ? [{ file, at, kilobytes: kilobytesOf(join(folder, file)) }] : []
    })
    .sort((a, b) => b.at.localeCompare(a.at))
}

const noRoom = new Set([
  'EACCES',
  'EPERM',
  'EROFS',
  'ENOTDIR',
  'EEXIST',
  'SQLITE_CANTOPEN',
  'SQLITE_READONLY',
])

/** Why a backup could not be written, in the shop's own words where they are known. */
function refusedBackup(error: unknown): never {
  const { code } = error as NodeJS.ErrnoException
  if (error instanceof LedgerRefused) refuse('backup.damaged')
  if (code && noRoom.has(code)) refuse('backup.noAccess')
  throw error
}

/**
 * Writes a checked copy of the ledger into the folder of backups, named by the instant, copies the photographs and papers that are missing
 * there, and takes the oldest ledgers beyond `backupsKept` away. Refuses with `backup.noAccess` where the folder cannot be written to, `backup.damaged` where the copy
 * does not pass its check.
 */
export function writeBackup(ledger: Ledger, at: string): Backup {
  const folder = backupFolder(ledger.file)
  const target = join(folder, backupName(ledger.file, at))
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    ledger.backUp(target)
    copyBeside(ledger.file, folder)
  } catch (error) {
    refusedBackup(error)
  }
  for (const { file } of backupsOf(ledger.file).slice(backupsKept)) rmSync(join(folder, file))
  return { file: basename(target), at, kilobytes: kilobytesOf(target) }
}
