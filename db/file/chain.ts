import { createHash } from 'node:crypto'

/** What the first row of the day book carries as the hash before it. */
export const firstHash = '0'.repeat(64)

/** How many random bytes hide an input behind its commitment. */
export const saltBytes = 32

/** What a row of the day book is chained by: everything of it but the input itself, for which its commitment stands. */
export interface Link {
  readonly previousHash: string
  readonly at: string
  readonly personId: number | null
  readonly act: string
  readonly version: number
  readonly key: string | null
  readonly subjectKind: string
  readonly subjectId: number
  readonly commitment: string
}

const sha256 = (bytes: string | Buffer): string => createHash('sha256').update(bytes).digest('hex')

/**
 * The commitment to an input: SHA-256 over the salt's bytes and the input's text as UTF-8, as 64 hex digits. It binds to the input while
 * both are there, and tells nothing of it once they are gone: the salt cannot be guessed.
 */
export const commitmentTo = (salt: string, input: string): string =>
  sha256(Buffer.concat([Buffer.from(salt, 'hex'), Buffer.from(input, 'utf8')]))

/** The hash that chains a row to the one before it: SHA-256 over its parts as a JSON list, in this order. */
export const rowHash = (row: Link): string =>
  sha256(
    JSON.stringify([
      row.previousHash,
      row.at,
      row.personId,
      row.act,
      row.version,
      row.key,
      row.subjectKind,
      row.subjectId,
      row.commitment,
    ]),
  )
