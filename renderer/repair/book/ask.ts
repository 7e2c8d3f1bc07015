import type { BookAsked } from '../../../core/pricing/book-line.ts'
import { bookHours, type PriceBook } from '../../../core/pricing/price-book.ts'
import { supposedMovement } from '../../../core/vocabulary/clock.ts'
import { type Work, works } from '../../../core/vocabulary/work.ts'
import type { Words } from '../../../core/words/en/index.ts'
import type { Repair } from '../repair.ts'

/** What is being asked of the price book, as typed. */
export interface TypedAsk {
  readonly from: BookAsked['from']
  readonly work: Work | ''
  readonly furtherHours: string
  readonly rush: boolean
  readonly partId: string
  readonly by: 'markup' | 'price'
  readonly pieces: string
  readonly outsideWork: Work | ''
  readonly cost: string
  readonly distance: string
  readonly clocks: string
}

const blankAsk: TypedAsk = {
  from: 'labour',
  work: '',
  furtherHours: '',
  rush: false,
  partId: '',
  by: 'markup',
  pieces: '1',
  outsideWork: '',
  cost: '',
  distance: '',
  clocks: '1',
}

/** The work that the book has hours for on a clock like this. */
export const knownWorks = (book: PriceBook, clock: Repair['clock']): Work[] =>
  works.filter(work => bookHours(book, work, clock.form, supposedMovement(clock).trains))

/** What is asked to begin with: the work asked for when the clock came in, where the book knows it. */
export function firstAsk(book: PriceBook, { clock, repair }: Pick<Repair, 'clock' | 'repair'>): TypedAsk {
  const work = knownWorks(book, clock).find(known => known === repair.scope) ?? ''
  return { ...blankAsk, work }
}

const orNothing = (text: string) => text.trim() || '0'

/** The question as the price book takes it; null while something it needs is not typed yet. */
export function askedOf(ask: TypedAsk): BookAsked | null {
  const { from, work, rush } = ask
  switch (from) {
    case 'labour':
      return work ? { from, work, furtherHours: orNothing(ask.furtherHours), rush } : null
    case 'part':
      return ask.partId && Number(ask.pieces) > 0
        ? { from, by: ask.by, pieces: Math.trunc(Number(ask.pieces)) }
        : null
    case 'outside':
      return ask.cost.trim() ? { from, work: ask.outsideWork || null, cost: ask.cost.trim() } : null
    case 'call-out':
      return { from, distance: orNothing(ask.distance), clocks: Number(ask.clocks) }
    default:
      return { from }
  }
}

/** The sentence with its first letter large. */
export const large = (text: string) => text.charAt(0).toLocaleUpperCase('en') + text.slice(1)

/** What the line says to begin with; `part` is the name of the part chosen. */
export function describedAs(asked: BookAsked, part: string, { lineWorks, priceBook }: Words): string {
  switch (asked.from) {
    case 'labour':
      return large(lineWorks[asked.work])
    case 'part':
      return part
    case 'outside':
      return asked.work ? large(lineWorks[asked.work]) : priceBook.outsideWork
    case 'fee-credit':
      return priceBook.feeTakenOff
    default:
      return large(lineWorks[asked.from])
  }
}
