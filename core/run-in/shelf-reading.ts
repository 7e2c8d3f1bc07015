import type { Instant } from '../calendar/zone.ts'

/** What was done to a clock that changes how it goes: it stands elsewhere or otherwise from then on. */
export const shelfEvents = ['cased', 'moved', 'oiled', 'adjusted'] as const
export type ShelfEvent = (typeof shelfEvents)[number]

/** A reading made on the round: how the hands stand, what was heard and seen, what was done. Blows and quarters are told apart; nobody adds them up. */
export interface ShelfReading {
  readonly at: Instant
  /** Seconds fast (+) or slow (−) as found; left out where it was not read. */
  readonly errorSeconds?: number | undefined
  /** Seconds fast or slow as left: the hands were set. */
  readonly leftSeconds?: number | undefined
  readonly wound?: boolean | undefined
  /** Found stopped and set going again. */
  readonly stopped?: boolean | undefined
  /** Turns given to the rating nut; which way is + is the shop's own choice, and the clock's answer tells the factor. */
  readonly nutTurns?: number | undefined
  readonly event?: ShelfEvent | undefined
  /** The hour the dial showed, 1 to 12, and the blows counted at it. */
  readonly hour?: { readonly shown: number; readonly counted: number } | undefined
  /** Blows counted at the half hour. */
  readonly half?: number | undefined
  /** Which quarter was heard, the fourth before the hour, and whether its notes were right. */
  readonly quarter?: { readonly which: 1 | 2 | 3 | 4; readonly right: boolean } | undefined
  /** All twelve hours, or all four quarters, were heard right one after another, the hands led on by hand. */
  readonly twelveRight?: boolean | undefined
  readonly fourRight?: boolean | undefined
  /** The chime was put wrong on purpose, and set itself right or did not. */
  readonly selfCorrected?: boolean | undefined
  /** Silenced, it was silent. */
  readonly silent?: boolean | undefined
  /** Asked to repeat, it repeated rightly. */
  readonly repeats?: boolean | undefined
  readonly inBeat?: boolean | undefined
  /** Heard without a count, as older logs say it. */
  readonly strikeRight?: boolean | undefined
  readonly chimeRight?: boolean | undefined
}

/** Milliseconds of an instant already checked. */
export const msOf = ({ at }: { readonly at: Instant }): number => Date.parse(at)

/** How the hands stand after the reading: as left, else as found. */
export const leftOn = ({ errorSeconds, leftSeconds }: ShelfReading): number | undefined =>
  leftSeconds ?? errorSeconds

/** Whether the reading ends one stretch of free running and begins another. */
export const opensStretch = ({ leftSeconds, nutTurns, stopped, event }: ShelfReading): boolean =>
  Boolean(leftSeconds !== undefined || nutTurns || stopped || event)
