import { readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setImmediate as breath } from 'node:timers/promises'
import { type KeepingPolicy, keptCopies } from '../../core/backups/kept.ts'
import { folderBeside, keptBeside } from '../../db/file/files-beside.ts'
import { lookInto } from '../../db/file/look.ts'
import { manifestPath } from '../../db/file/manifest.ts'
import { backupsOf, copyPath } from './backups.ts'
import { namesakeIn } from './set-aside.ts'

/** A file that this program put beside copies: its name is a hash, in a folder of the hash's first two digits. */
const ownFile = /^([0-9a-f]{2})[0-9a-f]{62}\.(pdf|jpg|png)$/

/** Every photograph and paper that some copy in the folder needs; undefined where one of them cannot be looked into. */
async function needed(folder: string, ledger: string): Promise<Set<string> | undefined> {
  const hashes = new Set<string>()
  for (const { at } of backupsOf(ledger, folder)) {
    await breath()
    try {
      for (const { hash } of lookInto(copyPath(folder, ledger, at)).files) hashes.add(hash)
    } catch {
      return undefined
    }
  }
  return hashes
}

function removeUnneeded(folder: string, keep: ReadonlySet<string>): void {
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const [, first] = ownFile.exec(entry.name) ?? []
    const path = join(entry.parentPath, entry.name)
    if (entry.isFile() && first && path === join(folder, first, entry.name))
      if (!keep.has(entry.name.slice(0, 64))) rmSync(path)
  }
}

/**
 * Takes away the copies of a ledger in a folder that are not kept by age, then the photographs and papers that no copy left there
 * needs. The newest copy stays, and whatever else lies in the folder. Where a copy cannot be looked into, no photograph or paper goes.
 */
export async function pruneCopies(
  folder: string,
  ledger: string,
  policy: KeepingPolicy,
  timeZone: string,
): Promise<void> {
  const instants = backupsOf(ledger, folder).map(({ at }) => at)
  const kept = new Set(keptCopies(instants, policy, timeZone))
  const goes = instants.filter(at => !kept.has(at)).map(at => copyPath(folder, ledger, at))
  if (goes.length === 0) return
  // The file first: a manifest without one says nothing.
  for (const copy of goes) for (const path of [copy, manifestPath(copy)]) rmSync(path, { force: true })
  const keep = await needed(folder, ledger)
  if (!keep) return
  for (const what of keptBeside) removeUnneeded(folderBeside(namesakeIn(folder, ledger), what), keep)
}
