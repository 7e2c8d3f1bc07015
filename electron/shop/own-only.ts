import { chmodSync, existsSync } from 'node:fs'
import { folderBeside, keptBeside } from '../../db/file/files-beside.ts'
import { headPath } from '../../db/file/head.ts'
import { backupFolder } from '../copies/backups.ts'

/** Another user's file or a disk without such rights keeps its own. */
function setMode(path: string, mode: number): void {
  try {
    if (existsSync(path)) chmodSync(path, mode)
  } catch {
    // As above: a ledger that can be read and written is opened all the same.
  }
}

/**
 * What the program writes from now on, and what stands there of the ledger already, is its user's alone: files 0600, folders 0700.
 * (On Windows rights are kept by the user's folder.)
 */
export function ownOnly(ledgerFile: string): void {
  process.umask(0o077)
  for (const end of ['', '-wal', '-shm']) setMode(`${ledgerFile}${end}`, 0o600)
  setMode(headPath(ledgerFile), 0o600)
  for (const folder of [...keptBeside.map(what => folderBeside(ledgerFile, what)), backupFolder(ledgerFile)])
    setMode(folder, 0o700)
}
