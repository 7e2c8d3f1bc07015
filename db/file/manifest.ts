import { createHash } from 'node:crypto'
import { createReadStream, readFileSync } from 'node:fs'
import { writeWholeLater } from './files-beside.ts'
import type { Tail } from './head.ts'

/** What is known beside a copy of the ledger file that was written with it. The photographs and papers it needs stand in the file itself. */
export interface Manifest {
  readonly format: 1
  /** The ledger's own; null where the file is of a shape that had none. */
  readonly identity: string | null
  /** The last row of its day book. */
  readonly head: Tail
  readonly bytes: number
  /** Of the file, 64 hex digits. */
  readonly sha256: string
}

/** Where the manifest of a copy stands: beside it, under its name. */
export const manifestPath = (copy: string): string => `${copy}.manifest`

/** The manifest of a copy; undefined where there is none that can be read. */
export function readManifest(copy: string): Manifest | undefined {
  try {
    const read = JSON.parse(readFileSync(manifestPath(copy), 'utf8')) as Manifest
    return read.format === 1 ? read : undefined
  } catch {
    return undefined
  }
}

/** Writes the manifest of a copy, whole or not at all. */
export const writeManifest = (copy: string, manifest: Manifest): Promise<void> =>
  writeWholeLater(manifestPath(copy), Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`))

/** What the bytes of a file of any size hash to, read between other work: SHA-256, 64 hex digits. */
export async function sha256Of(path: string): Promise<string> {
  const hash = createHash('sha256')
  for await (const bytes of createReadStream(path, { highWaterMark: 1 << 18 })) hash.update(bytes as Buffer)
  return hash.digest('hex')
}
