import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export const migrations = join(import.meta.dirname, '../../migrations')
export const now = () => '2027-03-01T09:00:00.000Z'

/** A folder that goes when the test ends. */
export function temporaryFolder() {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-'))
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) }
}
