import type { LineWork } from '../vocabulary/work.ts'
import { type Caution, type CautionFacts, cautionsFor } from './cautions.ts'

/**
 * Work that a caution forbids outright. A silvered dial is re-silvered or left alone, never cleaned: its film is very
 * thin (trade reference §7, common practice).
 */
const forbidden: Partial<Record<Caution, readonly LineWork[]>> = { 'silvered-dial': ['dial-cleaning'] }

/** The caution that forbids this work on this clock; null where none does. */
export const refusedWork = (clock: CautionFacts, work: LineWork): Caution | null =>
  cautionsFor(clock).find(caution => forbidden[caution]?.includes(work)) ?? null
