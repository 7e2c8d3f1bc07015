import { problem } from '../../core/problems.ts'
import { Refusal } from '../../db/rows/refusal.ts'

/**
 * The key under which an act is done once, from the header Idempotency-Key (IETF draft “The Idempotency-Key HTTP Header Field”, where it
 * is a quoted string; the quotes may be left out). Null where none is sent; refuses one that is malformed.
 */
export function idempotencyKey(header: string | undefined): string | null {
  if (header === undefined) return null
  const key = /^("?)([\w.-]{8,128})\1$/.exec(header)?.[2]
  if (key === undefined) throw new Refusal([problem('request.keyMalformed', '')])
  return key
}
