import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { checkHeader } from './header.ts'
import { type Ledger, type OpenOptions, openLedger } from './ledger.ts'
import { LedgerRefused } from './ledger-refused.ts'

/**
 * Opens a copy of the ledger, made in the computer's folder for passing files and taken away on closing: whatever is done
 * with it, not a byte of the file or beside it changes. No other process may have the ledger open. Throws LedgerRefused.
 */
export function openUntouched(file: string, options: OpenOptions): Ledger {
  if (checkHeader(file) === 'new') throw new LedgerRefused('ledger.foreign')
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-copy-'))
  const remove = () => rmSync(folder, { recursive: true, force: true })
  try {
    const ledger = openLedger(copied(file, folder), options)
    const close = () => {
      ledger.close()
      remove()
    }
    return { ...ledger, close }
  } catch (error) {
    remove()
    throw error
  }
}

/** The copy, with what a killed process left in the log beside the file. */
function copied(file: string, folder: string): string {
  const copy = join(folder, 'copy.countwheel')
  for (const ending of ['', '-wal'])
    if (existsSync(`${file}${ending}`)) copyFileSync(`${file}${ending}`, `${copy}${ending}`)
  return copy
}
