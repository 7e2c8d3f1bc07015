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
import { dirname, join, parse } from 'node:path'
import { type MediaType, mediaTypes } from '../core/photograph/picture.ts'
import { syncPath } from './backup.ts'

/** A photograph as its file is found: by what its bytes hash to (SHA-256, 64 hex digits) and its kind. */
export interface PhotographFile {
  readonly hash: string
  readonly mediaType: MediaType
}

/** What the bytes are known by. */
export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** The folder of a ledger's photographs, beside it: `shop.photographs` of `shop.countwheel`. */
export function photographFolder(ledgerFile: string): string {
  const { dir, name } = parse(ledgerFile)
  return join(dir, `${name}.photographs`)
}

/** Where a photograph's file stands: `shop.photographs/ab/abcdef….jpg`. */
export const photographPath = (ledgerFile: string, { hash, mediaType }: PhotographFile): string =>
  join(photographFolder(ledgerFile), hash.slice(0, 2), `${hash}.${mediaTypes[mediaType]}`)

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

/** Puts the bytes on disk under their hash, whole or not at all; bytes that are there already are left as they are. */
export function writePhotograph(ledgerFile: string, file: PhotographFile, bytes: Uint8Array): void {
  const path = photographPath(ledgerFile, file)
  if (existsSync(path)) return
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
  writeWhole(path, bytes)
  syncPath(dirname(path))
  syncPath(photographFolder(ledgerFile))
}

/** The bytes, or nothing where the file is not there. */
export function readPhotograph(
  ledgerFile: string,
  file: PhotographFile,
): Uint8Array<ArrayBuffer> | undefined {
  try {
    return new Uint8Array(readFileSync(photographPath(ledgerFile, file)))
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined
    throw error
  }
}
