import { type MediaType, mediaTypes } from '../../core/photograph/picture.ts'
import { foundBeside, pathBeside, readBeside, writeBeside } from './files-beside.ts'

/** A photograph as its file is found: by what its bytes hash to (SHA-256, 64 hex digits) and its kind. */
export interface PhotographFile {
  readonly hash: string
  readonly mediaType: MediaType
}

/** Where a photograph's file stands: `shop.photographs/ab/abcdef….jpg`. */
export const photographPath = (ledgerFile: string, { hash, mediaType }: PhotographFile): string =>
  pathBeside(ledgerFile, 'photographs', hash, mediaTypes[mediaType])

/** Puts the bytes on disk under their hash, whole or not at all; bytes that are there already are left as they are. */
export const writePhotograph = (ledgerFile: string, file: PhotographFile, bytes: Uint8Array): void =>
  writeBeside(photographPath(ledgerFile, file), bytes)

/** The bytes, or nothing where the file is not there. */
export const readPhotograph = (
  ledgerFile: string,
  file: PhotographFile,
): Uint8Array<ArrayBuffer> | undefined => readBeside(photographPath(ledgerFile, file))

/** The bytes where they are there and hash to what they are named by. */
export function soundPhotograph(
  ledgerFile: string,
  file: PhotographFile,
): Uint8Array<ArrayBuffer> | undefined {
  const found = foundBeside(photographPath(ledgerFile, file), file.hash)
  return found.state === 'kept' ? found.bytes : undefined
}
