import { createHash } from 'node:crypto'
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  writeSync,
} from 'node:fs'
import { mkdir, rename, writeFile } from 'node:fs/promises'
import { dirname, join, parse } from 'node:path'
import { syncPath } from './backup.ts'

/** What stands beside a ledger in a folder of its own, each file named by the SHA-256 of its bytes. */
export const keptBeside = ['photographs', 'papers'] as const
export type KeptBeside = (typeof keptBeside)[number]

/** What the bytes are known by: 64 hex digits. */
export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** The folder beside a ledger: `shop.papers` of `shop.countwheel`. */
export function folderBeside(ledgerFile: string, what: KeptBeside): string {
  const { dir, name } = parse(ledgerFile)
  return join(dir, `${name}.${what}`)
}

/** Which ledger a folder belongs to, in the folder itself. */
const markOf = (ledgerFile: string, what: KeptBeside): string =>
  join(folderBeside(ledgerFile, what), 'ledger.identity')

const markIn = (ledgerFile: string, what: KeptBeside): string | undefined => {
  const bytes = readBeside(markOf(ledgerFile, what))
  return bytes && Buffer.from(bytes).toString().trim()
}

/** The folders beside a ledger that belong to another one. A folder without a mark is its own. */
export const foreignFolders = (ledgerFile: string, identity: string): KeptBeside[] =>
  keptBeside.filter(what => (markIn(ledgerFile, what) ?? identity) !== identity)

/** Marks the folders that stand beside a ledger as its own; where that cannot be written, they stay without. */
export function markFolders(ledgerFile: string, identity: string): void {
  for (const what of keptBeside)
    if (existsSync(folderBeside(ledgerFile, what)) && markIn(ledgerFile, what) === undefined)
      try {
        writeWhole(markOf(ledgerFile, what), Buffer.from(`${identity}\n`))
      } catch {
        // A mark is a help: a folder that cannot be written to is told when something is to be put in.
      }
}

/** Where a file stands: `shop.papers/ab/abcdef….pdf`. */
export const pathBeside = (ledgerFile: string, what: KeptBeside, hash: string, ending: string): string =>
  join(folderBeside(ledgerFile, what), hash.slice(0, 2), `${hash}.${ending}`)

function writeWhole(path: string, bytes: Uint8Array): void {
  const unfinished = `${path}.unfinished`
  const handle = openSync(unfinished, 'w')
  try {
    for (let at = 0; at < bytes.length; ) at += writeSync(handle, bytes, at)
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
  renameSync(unfinished, path)
}

/** Writes a file whole or not at all, and on disk, while other work goes on. */
export async function writeWholeLater(path: string, bytes: Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true, mode: 0o700 })
  await writeFile(`${path}.unfinished`, bytes, { flush: true, mode: 0o600 })
  await rename(`${path}.unfinished`, path)
}

/** Puts the bytes on disk at a path of `pathBeside`, whole or not at all; bytes that are there already are left as they are. */
export function writeBeside(path: string, bytes: Uint8Array): void {
  if (existsSync(path)) return
  const folder = dirname(path)
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  writeWhole(path, bytes)
  syncPath(folder)
  syncPath(dirname(folder))
}

/** The bytes, or nothing where the file is not there. */
export function readBeside(path: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    return new Uint8Array(readFileSync(path))
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    // ENOTDIR: a file stands where the folder should.
    if (code === 'ENOENT' || code === 'ENOTDIR') return undefined
    throw error
  }
}

/** The bytes as they were kept, or why they are not to be had. */
export type FoundBeside =
  | { readonly state: 'kept'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly state: 'missing' | 'damaged' }

/** Reads a file and holds it against the hash that it is named by. */
export function foundBeside(path: string, hash: string): FoundBeside {
  const bytes = readBeside(path)
  if (!bytes) return { state: 'missing' }
  return hashOf(bytes) === hash ? { state: 'kept', bytes } : { state: 'damaged' }
}
