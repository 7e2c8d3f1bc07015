import { readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { copyName, instantIn } from '../../db/file/copy-name.ts'
import { writeWholeLater } from '../../db/file/files-beside.ts'

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

/** Where the copy of an instant stands in a folder. */
export const copyPath = (folder: string, ledger: string, at: string): string =>
  join(folder, copyName(ledger, at))

/** A file's size; undefined where it is gone meanwhile, as with a stick that is pulled out. */
const bytesOf = (path: string): number | undefined => statSync(path, { throwIfNoEntry: false })?.size

const notThere = new Set(['ENOENT', 'ENOTDIR', 'EACCES', 'EIO', 'ENODEV'])

/** The names in the folder; none where it is not there or may not be looked into. */
function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
  } catch (error) {
    if (notThere.has((error as NodeJS.ErrnoException).code ?? '')) return []
    throw error
  }
}

/** The backups of the ledger at that path in a folder, the newest first; the folder beside it where none is named. */
export function backupsOf(ledger: string, folder: string = backupFolder(ledger)): Backup[] {
  return namesIn(folder)
    .flatMap(file => {
      const at = instantIn(file, ledger)
      const bytes = at === undefined ? undefined : bytesOf(join(folder, file))
      return at && bytes !== undefined ? [{ file, at, kilobytes: Math.ceil(bytes / 1024) }] : []
    })
    .sort((a, b) => b.at.localeCompare(a.at))
}

/** What is known beside a ledger of its last copy: a folder on a stick is remembered while it is away, or while the ledger cannot be opened. */
export interface LastCopy {
  readonly folder: string
  readonly at: string
  /** Number and hash of the last entry in it. */
  readonly count: number
  readonly hash: string
}

/** Where the last copy of a ledger is remembered: beside it. */
export const lastCopyPath = (ledger: string) => `${ledger}.last-backup`

/** Remembers the last copy of a ledger beside it. */
export const rememberCopy = (ledger: string, copy: LastCopy): Promise<void> =>
  writeWholeLater(lastCopyPath(ledger), Buffer.from(`${JSON.stringify(copy)}\n`))

/** The last copy as it is remembered; undefined where none is. */
export function rememberedCopy(ledger: string): LastCopy | undefined {
  try {
    return JSON.parse(readFileSync(lastCopyPath(ledger), 'utf8')) as LastCopy
  } catch {
    return undefined
  }
}

/** Every backup of a ledger in its usual places: beside it, and in the folder that the last one went to; their whole paths. */
export function backupPaths(ledger: string): string[] {
  const folders = new Set([backupFolder(ledger), rememberedCopy(ledger)?.folder ?? backupFolder(ledger)])
  return [...folders].flatMap(folder => backupsOf(ledger, folder).map(({ file }) => join(folder, file)))
}
