import type { CivilDate } from '../calendar/civil.ts'
import { daysBetween } from '../calendar/civil.ts'
import { isOverdue } from '../calendar/due.ts'
import type { WaitReason } from '../vocabulary/work.ts'
import { awaitsWord, isToCollect, isUnfinished, type Stage } from './stages.ts'

/** The groups of the counter's list, in the order they are read: what is most urgent to the owner waiting comes first. */
export const counterGroups = [
  'comeback',
  'to-collect',
  'awaiting-word',
  'to-send',
  'late',
  'parts-in',
  'to-estimate',
  'in-hand',
] as const
export type CounterGroup = (typeof counterGroups)[number]

/** What a repair's place on the counter's list depends on. */
export interface CounterFacts {
  readonly stage: Stage
  readonly comeback: boolean
  readonly covered: boolean
  readonly waitingFor: WaitReason | null
  /** An estimate is written, and its owner has not been sent it. */
  readonly toSend: boolean
  /** It waits for parts, and everything ordered for it has arrived. */
  readonly partsIn: boolean
  readonly estimatedOn: CivilDate | null
}

/** An estimated date that has passed while the clock is not ready. */
export const isLate = (
  { stage, estimatedOn }: Pick<CounterFacts, 'stage' | 'estimatedOn'>,
  today: CivilDate,
): boolean => isOverdue(estimatedOn, today) && isUnfinished(stage)

/** The group a repair in the shop belongs to today. */
export function counterGroup(facts: CounterFacts, today: CivilDate): CounterGroup {
  const { stage } = facts
  if (isToCollect(stage)) return 'to-collect'
  if (facts.comeback) return 'comeback'
  if (facts.toSend) return 'to-send'
  if (awaitsWord(facts)) return 'awaiting-word'
  if (isLate(facts, today)) return 'late'
  if (facts.partsIn) return 'parts-in'
  return stage === 'taken-in' ? 'to-estimate' : 'in-hand'
}

/** True when a clock has stood ready longer than the shop's period; what the law then allows is local. */
export const isUncollected = (
  stage: Stage,
  readySince: CivilDate,
  today: CivilDate,
  uncollectedDays: number,
): boolean => isToCollect(stage) && daysBetween(readySince, today) > uncollectedDays
