import { randomBytes } from 'node:crypto'
import type { Outside } from '../../db/file/outside.ts'

/** This computer's clock and chance. */
export const outside: Outside = {
  now: () => new Date().toISOString(),
  random: bytes => randomBytes(bytes),
}
