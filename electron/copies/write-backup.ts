import { existsSync, mkdirSync, statSync } from 'node:fs'
import { copyFile, open, readFile, rename, rm } from 'node:fs/promises'
import { basename, dirname } from 'node:path'
import { syncPath } from '../../db/file/backup.ts'
import {
  folderBeside,
  foreignFolders,
  hashOf,
  keptBeside,
  markFolders,
  pathBeside,
  writeWholeLater,
} from '../../db/file/files-beside.ts'
import type { Ledger } from '../../db/file/ledger.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import { type Contents, lookInto, type NeededFile } from '../../db/file/look.ts'
import { sha256Of, writeManifest } from '../../db/file/manifest.ts'
import { sweepFolder, unfinishedEnd } from '../../db/file/unfinished.ts'
import { Refusal, refuse } from '../../db/rows/refusal.ts'
import { type Backup, backupFolder, copyPath, rememberCopy } from './backups.ts'
import { namesakeIn } from './set-aside.ts'

/** Where a copy goes and when; `signal` ends it on the way, and nothing of it is then taken for a copy. */
export interface Copying {
  readonly at: string
  readonly folder: string
  readonly signal?: AbortSignal
}

const noRoom = new Set(['ENOSPC', 'EDQUOT', 'SQLITE_FULL'])
const gone = new Set(['ENOENT', 'EIO', 'ENODEV', 'ENXIO'])
const noAccess = new Set([
  'EACCES',
  'EPERM',
  'EROFS',
  'ENOTDIR',
  'EEXIST',
  'SQLITE_CANTOPEN',
  'SQLITE_READONLY',
])

/** Why a backup could not be written, in the shop's own words where they are known. */
function refusedBackup(error: unknown, folder: string): never {
  if (error instanceof Refusal) throw error
  if (error instanceof LedgerRefused) refuse('backup.damaged')
  const { code = '' } = error as NodeJS.ErrnoException
  if (noRoom.has(code)) refuse('backup.full', '', { folder })
  if (gone.has(code)) refuse('backup.folderGone', '', { folder })
  if (noAccess.has(code)) refuse('backup.noAccess', '', { folder })
  throw error
}

/** A file that stands beside the ledger where a folder of its own should be is in the way of everything in it. */
function refuseFileInstead(ledger: string): void {
  for (const path of keptBeside.map(what => folderBeside(ledger, what)))
    if (statSync(path, { throwIfNoEntry: false })?.isDirectory() === false)
      refuse('folder.isAFile', '', { name: basename(path) })
}

/** The folder beside the ledger is made; one that the shop chose is there, or its disk is not: then nothing is made in its place. */
function prepareFolder(ledger: string, folder: string): void {
  if (folder === backupFolder(ledger)) mkdirSync(folder, { recursive: true, mode: 0o700 })
  else if (!existsSync(folder)) refuse('backup.folderGone', '', { folder })
  for (const what of keptBeside)
    mkdirSync(folderBeside(namesakeIn(folder, ledger), what), { recursive: true, mode: 0o700 })
  sweepFolder(namesakeIn(folder, ledger))
}

/** The bytes of a photograph or paper beside the ledger; nothing where they are gone or are not what their name says, which `verify` tells. */
async function soundBytes(ledger: string, { what, hash, ending }: NeededFile): Promise<Buffer | undefined> {
  const bytes = await readFile(pathBeside(ledger, what, hash, ending)).catch(() => undefined)
  return bytes && hashOf(bytes) === hash ? bytes : undefined
}

/** Copies the photographs and papers that are missing beside the copies; those that are there have the same bytes, as their names say. */
async function copyMissing(files: readonly NeededFile[], ledger: string, { folder, signal }: Copying) {
  const beside = namesakeIn(folder, ledger)
  const touched = new Set<string>()
  for (const file of files) {
    signal?.throwIfAborted()
    const to = pathBeside(beside, file.what, file.hash, file.ending)
    if (existsSync(to)) continue
    const bytes = await soundBytes(ledger, file)
    if (bytes) await writeWholeLater(to, bytes)
    touched.add(dirname(to))
  }
  for (const path of touched) if (existsSync(path)) syncPath(path)
}

async function syncFile(path: string): Promise<void> {
  const handle = await open(path, 'r+')
  await handle.sync().finally(() => handle.close())
}

/** Moves a finished file to another folder; on another disk it is copied there, and what arrives is held against `sha256`. */
async function moveChecked(from: string, to: string, sha256: string): Promise<void> {
  try {
    await rename(from, to)
    await syncFile(to)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error
    await copyFile(from, to)
    await syncFile(to)
    if ((await sha256Of(to)) !== sha256) throw new LedgerRefused('ledger.damaged')
    await rm(from)
  }
}

/** Puts the copy under its name, its manifest first: a ledger file of that name is a whole copy, with everything that belongs to it. */
async function putInPlace(made: string, target: string, contents: Contents): Promise<void> {
  const sha256 = await sha256Of(made)
  const { identity, tail } = contents
  const bytes = statSync(made).size
  await moveChecked(made, `${target}${unfinishedEnd}`, sha256)
  await writeManifest(target, { format: 1, identity, head: tail, bytes, sha256 })
  await rename(`${target}${unfinishedEnd}`, target)
  syncPath(dirname(target))
}

/** Makes the copy of the file on the ledger's own disk: a slow stick holds nothing up. */
async function copyInto(ledger: Ledger, made: string, target: string, copying: Copying): Promise<Contents> {
  const { folder, signal } = copying
  refuseFileInstead(ledger.file)
  prepareFolder(ledger.file, folder)
  await ledger.backUpInSteps(made)
  const contents = lookInto(made)
  const beside = namesakeIn(folder, ledger.file)
  if (contents.identity && foreignFolders(beside, contents.identity).length > 0)
    refuse('backup.otherLedger', '', { folder })
  await copyMissing(contents.files, ledger.file, copying)
  signal?.throwIfAborted()
  await putInPlace(made, target, contents)
  if (contents.identity) markFolders(beside, contents.identity)
  return contents
}

/**
 * Writes a checked copy of the ledger into a folder, named by the instant, with the photographs and papers that are missing there,
 * while the ledger goes on. Refuses with a `backup.…` code that says what to do, and nothing half-written is taken for a copy.
 */
export async function writeBackup(ledger: Ledger, copying: Copying): Promise<Backup> {
  const { at, folder } = copying
  const made = `${ledger.file}.copy${unfinishedEnd}`
  const target = copyPath(folder, ledger.file, at)
  try {
    const { tail } = await copyInto(ledger, made, target, copying)
    await rememberCopy(ledger.file, { folder, at, count: tail.count, hash: tail.hash })
  } catch (error) {
    await rm(made, { force: true }).catch(() => {})
    refusedBackup(error, folder)
  }
  return { file: basename(target), at, kilobytes: Math.ceil(statSync(target).size / 1024) }
}
