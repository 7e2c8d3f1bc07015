import { dayMs } from '../calendar/units.ts'
import type { Instant } from '../calendar/zone.ts'

/** A stretch of time; open at its end while it lasts. */
export interface Stretch {
  readonly from: Instant
  readonly until: Instant | null
}

/** What the time of a repair from intake to hand-over is told apart by. */
export interface TurnRoundFacts {
  readonly takenInAt: Instant
  /** When work was first allowed: the go-ahead, or the intake where none was needed. */
  readonly allowedAt: Instant
  readonly readyAt: Instant
  readonly collectedAt: Instant
  /** Waits on record, outside work away, findings until the owner's next word. */
  readonly waits: readonly Stretch[]
  readonly runIns: readonly Stretch[]
}

/** The parts of the time a clock is in the shop, in the order of the job. */
export const turnRoundParts = ['word', 'bench', 'waiting', 'run-in', 'to-collect'] as const
export type TurnRoundPart = (typeof turnRoundParts)[number]

/** Milliseconds of each part. */
export type TurnRound = Readonly<Record<TurnRoundPart, number>>

const covers = (stretches: readonly Stretch[], at: Instant): boolean =>
  stretches.some(({ from, until }) => from <= at && (until === null || at < until))

/** Which part an instant belongs to: the shelf before all else, so that test weeks are never taken for delay. */
function partAt(facts: TurnRoundFacts, at: Instant): TurnRoundPart {
  if (covers(facts.runIns, at)) return 'run-in'
  if (at >= facts.readyAt) return 'to-collect'
  if (at < facts.allowedAt) return 'word'
  return covers(facts.waits, at) ? 'waiting' : 'bench'
}

/** Every instant within the repair at which something begins or ends, in order. */
function turns({ takenInAt, allowedAt, readyAt, collectedAt, waits, runIns }: TurnRoundFacts): Instant[] {
  const ends = [...waits, ...runIns].flatMap(({ from, until }) => [from, until ?? collectedAt])
  const within = [allowedAt, readyAt, ...ends].filter(at => at > takenInAt && at < collectedAt)
  return [...new Set([takenInAt, ...within, collectedAt])].sort()
}

/** The time from intake to hand-over told apart: every millisecond belongs to one part, so the parts add up to the whole. */
export function turnRound(facts: TurnRoundFacts): TurnRound {
  const parts = { word: 0, bench: 0, waiting: 0, 'run-in': 0, 'to-collect': 0 }
  const at = turns(facts)
  for (const [i, from] of at.entries()) {
    const to = at[i + 1] ?? from
    parts[partAt(facts, from)] += Date.parse(to) - Date.parse(from)
  }
  return parts
}

/** The mean days of each part over all repairs of one name, and of the whole. */
export interface TurnRoundRow<K extends string> {
  readonly key: K
  readonly repairs: number
  readonly days: Readonly<Record<TurnRoundPart, number>>
  readonly allDays: number
}

function meanOf<K extends string>(key: K, rounds: readonly TurnRound[]): TurnRoundRow<K> {
  const mean = (part: TurnRoundPart) =>
    rounds.reduce((sum, round) => sum + round[part], 0) / rounds.length / dayMs
  const days = {
    word: mean('word'),
    bench: mean('bench'),
    waiting: mean('waiting'),
    'run-in': mean('run-in'),
    'to-collect': mean('to-collect'),
  }
  return {
    key,
    repairs: rounds.length,
    days,
    allDays: turnRoundParts.reduce((sum, part) => sum + days[part], 0),
  }
}

/** The mean turn-round by name, the most frequent first, equals in the order of their names. */
export const meanTurnRounds = <K extends string>(
  repairs: readonly { readonly key: K; readonly facts: TurnRoundFacts }[],
): TurnRoundRow<K>[] =>
  [...Map.groupBy(repairs, repair => repair.key)]
    .map(([key, rows]) =>
      meanOf(
        key,
        rows.map(({ facts }) => turnRound(facts)),
      ),
    )
    .sort((a, b) => b.repairs - a.repairs || (a.key < b.key ? -1 : 1))
