import type { verify } from '../../core/words/en/verify.ts'
import type { Read } from '../file/ledger.ts'
import type { MissingEntries } from '../file/missing.ts'

/** What can be wrong; each code has a sentence in the catalogue. */
export type FaultCode = keyof typeof verify.faults

/** One thing that is wrong, and the figures its sentence needs to say where. */
export interface Fault {
  readonly code: FaultCode
  readonly values: Readonly<Record<string, string | number>>
}

/** A ledger being looked at. */
export interface Examined {
  readonly read: Read
  /** The ledger's own file, beside which its photographs and papers stand: for a backup the ledger's name in the folder of backups. */
  readonly file: string
  /** The very file that is looked at, where that may be a backup. */
  readonly path?: string
  /** Entries that were acknowledged and are not in it, as far as is known beside it. */
  readonly missing?: MissingEntries | null
  /** Folder of the migrations. */
  readonly migrations: string
}

/** Yields what is wrong, and what should be known, and returns how many things it looked at. */
export type Check = (examined: Examined) => Generator<Fault, number>

/** Something that is in order and should be known, told like a fault. */
export interface Note extends Fault {
  readonly note: true
}

export const note = (code: FaultCode, values: Fault['values'] = {}): Note => ({ code, values, note: true })

export const fault = (code: FaultCode, values: Fault['values'] = {}): Fault => ({ code, values })
