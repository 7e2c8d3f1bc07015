/** What a ledger takes from outside, so that the same acts at the same times make the same ledger. */
export interface Outside {
  /** The present instant, ISO with milliseconds and Z. */
  readonly now: () => string
  /** That many bytes that nobody can foresee. */
  readonly random: (bytes: number) => Uint8Array
}
