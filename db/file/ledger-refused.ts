/** Why a ledger file cannot be opened; each code has a sentence that says what to do. */
export type LedgerRefusal =
  | 'ledger.foreign'
  | 'ledger.damaged'
  | 'ledger.foreignLog'
  | 'ledger.foreignFolders'
  | 'ledger.entriesMissing'
  | 'ledger.vanished'
  | 'ledger.newer'
  | 'ledger.otherHistory'
  | 'ledger.brokenReferences'
  | 'ledger.inUse'
  | 'ledger.notAFile'
  | 'ledger.noAccess'

/** The file was not opened and not changed. */
export class LedgerRefused extends Error {
  readonly code: LedgerRefusal
  readonly values: Readonly<Record<string, string | number>>

  constructor(code: LedgerRefusal, values: Readonly<Record<string, string | number>> = {}) {
    super(code)
    this.code = code
    this.values = values
  }
}

/** The ledger's file was taken away or replaced while the program had it open: nothing is written into what nobody will find. */
export class LedgerGone extends Error {
  constructor(file: string) {
    super(`${file} is not the file that was opened`)
  }
}
