import { useQuery } from '@tanstack/react-query'
import { type BookAsked, type BookLine, bookLine, sameFigures } from '../../../core/pricing/book-line.ts'
import type { Checked } from '../../../core/problems.ts'
import { answer, api } from '../../api.ts'
import { useShop } from '../../shop.tsx'
import type { Repair } from '../repair.ts'
import type { TypedLine } from '../typed-line.ts'

/** The price book as it speaks of one repair. */
export interface Book {
  /** The line it writes for what is asked, by the same sums as the ledger. */
  line(asked: BookAsked, partId: number | null): Checked<BookLine>
  /** The line it wrote, as long as its figures are still the book's. */
  stillOf(line: TypedLine): BookLine | null
}

/** The parts of the stores that can be put on a line. */
export function useParts() {
  const { data } = useQuery({ queryKey: ['stores'], queryFn: () => answer(api.pages.stores.$get()) })
  return data?.parts.filter(part => part.active)
}

/** The price book with everything on record that decides a price on this repair. */
export function useBook({ clock, feePaidMinor }: Repair): Book {
  const { settings } = useShop()
  const parts = useParts()
  const line = (asked: BookAsked, partId: number | null) => {
    const part = parts?.find(one => one.id === partId)
    const facts = {
      form: clock.form,
      trains: clock.trains,
      part: part ? { costMinor: part.unitCostMinor, priceMinor: part.unitPriceMinor } : null,
      feePaidMinor,
    }
    return bookLine(settings.prices, asked, facts, settings.place.currency)
  }
  return {
    line,
    stillOf: typed => {
      const told = typed.priced && line(typed.priced, typed.partId)
      return told?.ok && sameFigures(told.value, typed) ? told.value : null
    },
  }
}
