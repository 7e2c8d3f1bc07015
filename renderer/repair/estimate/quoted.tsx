import type { Minor } from '../../../core/money/minor.ts'
import { leavesQuoted } from '../../../core/pricing/quoted-range.ts'
import { useShop } from '../../shop.tsx'
import type { Repair } from '../repair.ts'

/** What was said of the cost over the counter, in words; nothing where nothing was. */
export function useQuotedWords({ quoted: { low, high } }: Pick<Repair, 'quoted'>): string | null {
  const { words, formats } = useShop()
  const { repair } = words
  if (low !== undefined && high !== undefined)
    return repair.quotedBetween(formats.money(low), formats.money(high))
  if (high !== undefined) return repair.quotedTo(formats.money(high))
  return low === undefined ? null : repair.quotedFrom(formats.money(low))
}

interface QuotedProps {
  readonly view: Pick<Repair, 'quoted'>
  readonly totalMinor: Minor
  readonly highMinor: Minor | null
}

/** What was said over the counter, and a warning where the sum being written leaves it. */
export function Quoted({ view, totalMinor, highMinor }: QuotedProps) {
  const { words } = useShop()
  const said = useQuotedWords(view)
  if (said === null) return null
  const leaves = leavesQuoted(view.quoted, totalMinor, highMinor)
  return (
    <p role="status" className={leaves ? 'late' : 'quiet'}>
      {words.repair.quoted}: {said}. {leaves && words.repair.leavesQuoted[leaves]}
    </p>
  )
}
