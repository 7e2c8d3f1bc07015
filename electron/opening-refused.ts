import { start } from '../core/words/en/start.ts'
import { LedgerRefused } from '../db/ledger-refused.ts'
import { LedgerHeld } from './hold.ts'

/** Why a ledger was not opened or not served, as a sentence that says what to do; throws what is none of these. */
export function openingRefused(error: unknown, { file, port }: { file: string; port?: number }): string {
  if (error instanceof LedgerHeld) {
    return error.address
      ? start.heldAtAddress({ file, address: error.address })
      : start.heldInWindow({ file })
  }
  if (error instanceof LedgerRefused) return error.message
  const code = (error as NodeJS.ErrnoException).code
  if (code === 'EADDRINUSE' && port !== undefined) return start.portTaken({ port })
  if (code === 'EACCES' && port !== undefined) return start.portRefused({ port })
  throw error
}
