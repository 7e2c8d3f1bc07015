import type { Ledger } from '../../db/file/ledger.ts'
import { readPhotograph } from '../../db/file/photograph-files.ts'
import { photographRow } from '../../db/rules/photographs.ts'
import type { Photographs } from './parts/speech.ts'

/** The bytes of a photograph of this ledger; nothing where its file is not there. */
export const photographsOf =
  (ledger: Ledger): Photographs =>
  hash => {
    const row = photographRow(ledger.read, hash)
    const bytes = row && readPhotograph(ledger.file, row)
    return bytes && Buffer.from(bytes)
  }
