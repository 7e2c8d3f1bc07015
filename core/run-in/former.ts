import type { ShelfReading } from './shelf-reading.ts'
import { soundSheet } from './sound-sheet.ts'
import type { Verdict, VerdictCode } from './verdict.ts'

/** What older runs froze of their figures, as far as it is still shown. */
export interface FormerVerdict {
  readonly rate: { readonly segments: readonly { readonly residualSd: number | null }[] }
  readonly troubles: Verdict['faults']
  readonly verdict: {
    readonly code: string
    readonly values: {
      readonly ratePerDay: number | null
      readonly suggestedTurns: number | null
      readonly ranDays: number
      readonly neededDays: number
      readonly since: string | null
    }
  }
}

/** The figures of an ended run as they were frozen, in today's shape or an older one. */
export type KeptVerdict = Verdict | FormerVerdict

const codes: Readonly<Record<string, VerdictCode>> = {
  mayPass: 'may-pass',
  regulate: 'regulate',
  startAgain: 'begin-again',
}

const isFormer = (kept: KeptVerdict): kept is FormerVerdict => typeof kept.verdict === 'object'

/** Frozen figures in today's shape; what nobody judged then is left open. */
export function verdictAsKept(kept: KeptVerdict): Verdict {
  if (!isFormer(kept)) return kept
  const { code, values } = kept.verdict
  return {
    verdict: codes[code] ?? 'not-yet',
    toShow: [],
    observedDays: values.ranDays,
    neededDays: values.neededDays,
    since: values.since,
    ratePerDay: values.ratePerDay,
    plusMinus: null,
    scatterSeconds: kept.rate.segments.at(-1)?.residualSd ?? null,
    secondsPerDayPerTurn: null,
    suggest: null,
    faults: kept.troubles,
    wrongs: [],
    slips: [],
    sheet: soundSheet([], {
      strike: 'none',
      chime: false,
      chimeCorrects: false,
      countWheel: false,
      durationDays: 8,
      sprung: false,
      isWound: true,
      setInBeat: false,
    }),
  }
}

/** A reading as older papers froze it. */
export type FormerReading = ShelfReading & {
  readonly handsSet?: boolean | undefined
  readonly heard?: { readonly at: string; readonly blows: number } | undefined
}

/** A frozen reading in today's shape: where hands were set, the error was told as left. */
export function readingAsKept({ handsSet, heard: _, ...reading }: FormerReading): ShelfReading {
  if (!handsSet) return reading
  const { errorSeconds, ...others } = reading
  return { ...others, leftSeconds: errorSeconds }
}
