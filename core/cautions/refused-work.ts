import type { LineWork, Task } from '../vocabulary/work.ts'
import { type Caution, type CautionFacts, cautionsFor } from './cautions.ts'

/** A caution that forbids some work. */
export type ForbiddingCaution = Extract<Caution, 'silvered-dial'>

interface Forbidden {
  readonly works: readonly LineWork[]
  /** Bench tasks that may come to such work, so that the caution is acknowledged before them. */
  readonly tasks: readonly Task[]
}

/**
 * Work that a caution forbids outright. A silvered dial is re-silvered or left alone, never cleaned: its film is very
 * thin (trade reference §7, common practice).
 */
const forbidden: Readonly<Record<ForbiddingCaution, Forbidden>> = {
  'silvered-dial': { works: ['dial-cleaning'], tasks: ['dial'] },
}

/** Whether the caution forbids some work, and must be acknowledged before anything that may come to it. */
export const forbidsWork = (caution: Caution): caution is ForbiddingCaution =>
  Object.hasOwn(forbidden, caution)

const forbidding = (clock: CautionFacts): readonly ForbiddingCaution[] =>
  cautionsFor(clock).filter(forbidsWork)

/** The caution that forbids this work on this clock; null where none does. */
export const refusedWork = (clock: CautionFacts, work: LineWork): ForbiddingCaution | null =>
  forbidding(clock).find(caution => forbidden[caution].works.includes(work)) ?? null

/** The caution to be acknowledged before this task, or (null) before work that is told in words alone; null where none is. */
export const cautionBefore = (clock: CautionFacts, task: Task | null): ForbiddingCaution | null =>
  forbidding(clock).find(caution => task === null || forbidden[caution].tasks.includes(task)) ?? null
