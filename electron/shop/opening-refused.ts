import { start, wayBack } from '../../core/words/en/start.ts'
import { type LedgerRefusal, LedgerRefused } from '../../db/file/ledger-refused.ts'
import { copiesOf } from '../copies/restore.ts'
import { LedgerHeld } from './hold.ts'

const sentences = start.ledgerRefusals satisfies Record<LedgerRefusal, unknown>

/** The newest of a ledger's backups and of the copies that are made beside it before it is brought up to date. */
export const lastBackup = (file: string): string | undefined => copiesOf(file)[0]

/** Why a ledger's file cannot be opened as it stands; `way` is what to do about it. */
export const refusedSentence = ({ code, values }: LedgerRefused, file: string, way = ''): string =>
  sentences[code]({ ...values, file, way }).trim()

/** Why a ledger was not opened or not served, as a sentence that says what to do; throws what is none of these. */
export function openingRefused(error: unknown, { file, port }: { file: string; port?: number }): string {
  if (error instanceof LedgerHeld) {
    return error.address
      ? start.heldAtAddress({ file, address: error.address })
      : start.heldInWindow({ file })
  }
  if (error instanceof LedgerRefused) return refusedSentence(error, file, wayBack(lastBackup(file)))
  const code = (error as NodeJS.ErrnoException).code
  if (code === 'EADDRINUSE' && port !== undefined) return start.portTaken({ port })
  if (code === 'EACCES' && port !== undefined) return start.portRefused({ port })
  throw error
}
