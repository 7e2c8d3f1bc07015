import type { Form } from '../vocabulary/clock.ts'
import type { Work } from '../vocabulary/work.ts'

/** Hours a piece of work takes on average. A null form or number of trains stands for any. */
export interface BookHours {
  readonly work: Work
  readonly form: Form | null
  readonly trains: 1 | 2 | 3 | null
  /** Decimal text. */
  readonly hours: string
}

/** What is added to the cost of a part up to and including `upToCost` (null: any cost), in percent. */
export interface MarkupTier {
  readonly upToCost: string | null
  readonly percent: string
}

/** A visit at the owner's home. Distances in the shop's own unit. */
export interface CallOut {
  readonly fee: string
  readonly freeDistance: string
  readonly perDistance: string
  readonly eachFurtherClock: string
}

/**
 * What the shop charges: editable shop policy throughout, amounts in major units and percentages as decimal texts.
 * No published figures were found for hours by form, markup or rush work.
 */
export interface PriceBook {
  readonly benchRate: string
  /** The least that labour on one repair comes to. */
  readonly minimumCharge: string
  readonly hours: readonly BookHours[]
  /** In order of rising cost. */
  readonly markup: readonly MarkupTier[]
  readonly outsidePercent: string
  readonly rushPercent: string
  readonly callOut: CallOut
  /** Fee for an estimate in major units; credited when the work goes ahead. */
  readonly estimateFee: string
}

/** Average hours to begin with. Common practice: 4 hours for two trains, 5 for three, parts and bushings extra. */
export const commonHours: readonly BookHours[] = [
  { work: 'overhaul', form: null, trains: 2, hours: '4' },
  { work: 'overhaul', form: null, trains: 3, hours: '5' },
]

const anyClock = (work: Work, hours: string): BookHours => ({ work, form: null, trains: null, hours })

/**
 * The hours a new shop begins with, every kind of work among them: those of common practice, and beside them figures of our
 * own that stand until the shop has its own (no published ones were found).
 */
export const openingHours: readonly BookHours[] = [
  ...commonHours,
  { work: 'overhaul', form: null, trains: 1, hours: '3' },
  { work: 'service', form: null, trains: 1, hours: '1.5' },
  { work: 'service', form: null, trains: 2, hours: '2' },
  { work: 'service', form: null, trains: 3, hours: '2.5' },
  anyClock('repair', '1'),
  anyClock('set-up', '0.5'),
  anyClock('case-repair', '1'),
  anyClock('dial-repair', '1'),
  anyClock('dial-cleaning', '0.5'),
  anyClock('re-silvering', '2'),
]

/** The entry that says most about the work: form and trains, then form, then trains, then any; the first of equals. */
export function bookHours(book: PriceBook, work: Work, form: Form, trains: number): BookHours | undefined {
  const fitting = book.hours.filter(
    entry =>
      entry.work === work &&
      (entry.form === null || entry.form === form) &&
      (entry.trains === null || entry.trains === trains),
  )
  const precision = ({ form, trains }: BookHours) => (form === null ? 0 : 2) + (trains === null ? 0 : 1)
  return fitting.toSorted((a, b) => precision(b) - precision(a))[0]
}
