import type { WaitReason } from '../vocabulary/work.ts'

/**
 * The stages of a repair and how many of the eight notches of the count wheel each has passed.
 * The order is the order of the job.
 */
export const stages = {
  'taken-in': { notches: 1 },
  'estimate-out': { notches: 2 },
  'go-ahead': { notches: 3 },
  'on-the-bench': { notches: 4 },
  waiting: { notches: 4 },
  'running-in': { notches: 6 },
  ready: { notches: 7 },
  declined: { notches: 7 },
  collected: { notches: 8 },
} as const

/** Where a repair stands. `declined` is ready to return unrepaired. */
export type Stage = keyof typeof stages

/** The stages of which something is true, in the order of the job. */
export const stagesThat = (holds: (stage: Stage) => boolean): Stage[] =>
  (Object.keys(stages) as Stage[]).filter(holds)

/** Whether the clock is in the shop. */
export const isInShop = (stage: Stage): boolean => stage !== 'collected'

/** Whether the clock may be collected: it is ready, or goes home unrepaired. */
export const isToCollect = (stage: Stage): boolean => stage === 'ready' || stage === 'declined'

/** Whether the shop still has something to do on the clock before it may be collected. */
export const isUnfinished = (stage: Stage): boolean => isInShop(stage) && !isToCollect(stage)

/** Whether the work is agreed and not done. */
export const isInWork = (stage: Stage): boolean =>
  isUnfinished(stage) && stage !== 'taken-in' && stage !== 'estimate-out'

/** Whether the clock has not come to the run-in shelf yet, so that its work lies ahead. */
export const isBeforeShelf = (stage: Stage): boolean => isUnfinished(stage) && stage !== 'running-in'

/** Whether an estimate can still be written for the repair, alone or together with others, and the owner's word recorded on it. */
export const takesEstimate = (stage: Stage): boolean => isInShop(stage) && stage !== 'ready'

/** Whether the owner was asked, and no word has come. */
export const awaitsWord = ({
  stage,
  waitingFor,
  toSend,
}: {
  readonly stage: Stage
  readonly waitingFor: WaitReason | null
  readonly toSend: boolean
}): boolean => !toSend && (stage === 'estimate-out' || waitingFor === 'owner')

interface Coming {
  readonly stage: Stage
  readonly estimateOnly: boolean
}

/** Whether the clock goes home without work: it came for an estimate alone, or its owner declined. */
export const isWithoutWork = ({ stage, estimateOnly }: Coming): boolean =>
  stage === 'declined' || estimateOnly

/** Whether nothing was to be agreed to: the clock goes home without work, or the shop answers for it under an earlier warranty. */
export const isWithoutOrder = (repair: Coming & { readonly covered: boolean }): boolean =>
  isWithoutWork(repair) || repair.covered
