import type { PlainCode } from '../problems.ts'
import type { WaitReason } from '../vocabulary/work.ts'
import { isInShop, isToCollect, type Stage, stages, takesEstimate } from './stages.ts'

/** What a person may do next to a repair. */
export type RepairAct =
  | 'write-estimate'
  | 'send-estimate'
  | 'record-word'
  | 'work'
  | 'end-wait'
  | 'start-run-in'
  | 'decide-run-in'
  | 'declare-ready'
  | 'back-to-bench'
  | 'invoice'
  | 'hand-over'

/** An act that is not allowed yet, and why. */
export interface Blocked {
  readonly act: RepairAct
  readonly code: PlainCode
}

/** What is on record about one repair, as far as its standing depends on it. */
export interface RepairFacts {
  /** A covered comeback needs no estimate and no go-ahead: the shop answers for it. */
  readonly covered: boolean
  readonly estimateOnly: boolean
  readonly estimateWritten: boolean
  readonly estimateSent: boolean
  /** The owner's last word on the work, null while none is on record. */
  readonly word: 'go-ahead' | 'declined' | null
  /** A finding is on record that needs the owner's word, and no word has come since. */
  readonly findingOpen: boolean
  /** An estimate was written after the last such finding. */
  readonly findingPriced: boolean
  readonly workBegun: boolean
  readonly labourRunning: boolean
  readonly waitsOpen: readonly WaitReason[]
  readonly runIn: 'none' | 'running' | 'passed' | 'to-bench'
  readonly readyAt: string | null
  readonly collectedAt: string | null
  readonly invoiced: boolean
}

/** Where a repair stands, what it waits for, the acts open now (the plain next one first) and what blocks the others. */
export interface Standing {
  readonly stage: Stage
  readonly notches: number
  readonly waitingFor: WaitReason | null
  /** The estimate last written lies here, while what comes next hangs on the owner's word. */
  readonly toSend: boolean
  readonly next: readonly RepairAct[]
  readonly blocked: readonly Blocked[]
}

const mayWork = (f: RepairFacts): boolean => f.covered || f.word === 'go-ahead'

const stageOf = (f: RepairFacts): Stage => {
  if (f.collectedAt) return 'collected'
  if (f.word === 'declined') return 'declined'
  if (f.readyAt) return 'ready'
  if (f.runIn === 'running') return 'running-in'
  if (mayWork(f) && (f.waitsOpen.length > 0 || f.findingOpen)) return 'waiting'
  if (mayWork(f) && f.workBegun) return 'on-the-bench'
  if (mayWork(f)) return 'go-ahead'
  if (f.estimateSent) return 'estimate-out'
  return 'taken-in'
}

const waitOrder: readonly WaitReason[] = ['owner', 'outside-work', 'parts', 'other']

const waitingFor = (f: RepairFacts): WaitReason | null =>
  f.findingOpen ? 'owner' : (waitOrder.find(reason => f.waitsOpen.includes(reason)) ?? null)

/** True while an estimate is written and not sent, and nothing goes on without the owner's word: the shop is to act, not the owner. */
export const isToSend = (
  f: Pick<RepairFacts, 'estimateWritten' | 'estimateSent'>,
  { stage, waitingFor }: Pick<Standing, 'stage' | 'waitingFor'>,
): boolean => f.estimateWritten && !f.estimateSent && (stage === 'taken-in' || waitingFor === 'owner')

/** The code of the first reason that holds, or null when none does. */
const firstThat = (...reasons: readonly (readonly [holds: boolean, code: PlainCode])[]): PlainCode | null =>
  reasons.find(([holds]) => holds)?.[1] ?? null

type Gate = (f: RepairFacts, stage: Stage) => PlainCode | null

/** What must be over and done before a clock leaves the bench, for the shelf or as ready. */
const benchCleared: Gate = (f, stage) =>
  firstThat(
    [stage === 'ready', 'standing.alreadyReady'],
    [stage === 'running-in', 'standing.runningIn'],
    [f.labourRunning, 'standing.labourRunning'],
    [waitingFor(f) !== null, 'standing.stillWaiting'],
  )

const maySettle = (f: RepairFacts): boolean => f.invoiced || f.covered || f.estimateOnly

/** For each act: null when it is allowed, else the code of what blocks it. In the order the job goes. */
const gates: Record<RepairAct, Gate> = {
  'record-word': f => firstThat([!f.estimateSent, 'standing.noEstimateSent']),
  'send-estimate': f => firstThat([!f.estimateWritten || f.estimateSent, 'standing.noEstimateWritten']),
  'write-estimate': (_, stage) => firstThat([!takesEstimate(stage), 'standing.alreadyReady']),
  'end-wait': f => firstThat([f.waitsOpen.length === 0, 'standing.notWaiting']),
  work: (f, stage) =>
    firstThat(
      [stage === 'running-in', 'standing.runningIn'],
      [stage === 'ready', 'standing.alreadyReady'],
      [!mayWork(f), 'standing.noGoAhead'],
    ),
  'start-run-in': (f, stage) =>
    firstThat([!mayWork(f), 'standing.noGoAhead'], [!f.workBegun, 'standing.noWork']) ??
    benchCleared(f, stage),
  'decide-run-in': (_, stage) => firstThat([stage !== 'running-in', 'standing.notRunningIn']),
  'declare-ready': (f, stage) =>
    firstThat([!mayWork(f) && !f.estimateOnly, 'standing.noGoAhead']) ?? benchCleared(f, stage),
  'back-to-bench': (_, stage) => firstThat([stage !== 'ready', 'standing.notReady']),
  invoice: (f, stage) =>
    firstThat([f.invoiced, 'standing.invoiced'], [!isToCollect(stage), 'standing.notReady']),
  'hand-over': (f, stage) =>
    firstThat(
      [!isToCollect(stage), 'standing.notReady'],
      [stage === 'ready' && !maySettle(f), 'standing.notInvoiced'],
    ),
}

/** The plain next act of each stage; it leads the list when nothing blocks it. */
const lead: Record<Stage, readonly RepairAct[]> = {
  'taken-in': ['send-estimate', 'write-estimate'],
  'estimate-out': ['record-word'],
  'go-ahead': ['work'],
  'on-the-bench': ['work', 'start-run-in'],
  waiting: ['send-estimate', 'record-word', 'end-wait'],
  'running-in': ['decide-run-in'],
  ready: ['invoice', 'hand-over'],
  declined: ['hand-over'],
  collected: [],
}

/** What is found comes to the owner as a supplement: until one is written, that is the next act. */
const leadOf = (f: RepairFacts, stage: Stage): readonly RepairAct[] =>
  stage === 'waiting' && f.findingOpen && !f.findingPriced ? ['write-estimate'] : lead[stage]

/**
 * The standing of a repair, derived from the recorded facts alone.
 * A collected repair allows nothing more; every act that is not open is listed with what blocks it.
 */
export function repairStanding(facts: RepairFacts): Standing {
  const stage = stageOf(facts)
  const acts = Object.keys(gates) as RepairAct[]
  const verdicts = acts.map(act => ({
    act,
    code: isInShop(stage) ? gates[act](facts, stage) : ('standing.collected' as const),
  }))
  const open = verdicts.filter(v => v.code === null).map(v => v.act)
  const waits = stage === 'waiting' ? waitingFor(facts) : null
  const leading = leadOf(facts, stage).filter(act => open.includes(act))
  return {
    stage,
    notches: stages[stage].notches,
    waitingFor: waits,
    toSend: isToSend(facts, { stage, waitingFor: waits }),
    next: [...leading, ...open.filter(act => !leading.includes(act))],
    blocked: verdicts.flatMap(({ act, code }) => (code === null ? [] : [{ act, code }])),
  }
}
