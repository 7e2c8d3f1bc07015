import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { readManifest } from '../file/manifest.ts'
import { type Check, fault } from './check.ts'

/** A backup is the very file that was written: its bytes are those its manifest tells of. Of a ledger, and of a backup without a manifest, nothing is known. */
export const copy: Check = function* ({ path }) {
  const manifest = path === undefined ? undefined : readManifest(path)
  if (path === undefined || !manifest) return 0
  const sha256 = createHash('sha256').update(readFileSync(path)).digest('hex')
  if (sha256 !== manifest.sha256) yield fault('copy.changed', { kept: manifest.sha256, found: sha256 })
  return 1
}
