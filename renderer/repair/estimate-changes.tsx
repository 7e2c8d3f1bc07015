import type { Minor } from '../../core/money/minor.ts'
import { minor } from '../../core/money/minor.ts'
import { comparedVersions } from '../../core/pricing/compare.ts'
import { useShop } from '../shop.tsx'
import type { Repair } from './repair.ts'

type Estimate = Repair['estimates'][number]
type Line = Estimate['lines'][number]

/** What a version of the estimate has against the one before it; nothing for the first one, and for a supplement, which stands beside it. */
export function EstimateChanges({ estimate, all }: { estimate: Estimate; all: readonly Estimate[] }) {
  const { words, formats } = useShop()
  const { priceBook } = words
  const before = all.filter(one => !one.supplement && one.version < estimate.version).at(-1)
  if (estimate.supplement || !before) return null
  const { added, removed, changed, differenceMinor } = comparedVersions<Line>(before.lines, estimate.lines)
  const of = (line: Line) => `${line.description}, ${formats.money(line.net)}`
  const entries = [
    ...added.map(line => [priceBook.added, of(line)]),
    ...removed.map(line => [priceBook.removed, of(line)]),
    ...changed.map(one => [priceBook.changed, priceBook.fromTo(of(one.before), of(one.after))]),
  ]
  return (
    <details>
      <summary>{priceBook.against(before.number)}</summary>
      {entries.length === 0 && <p className="quiet">{priceBook.unchanged}</p>}
      <ul className="changes">
        {entries.map(([what, line]) => (
          <li key={`${what} ${line}`}>
            <b>{what}</b> {line}
          </li>
        ))}
      </ul>
      <p>
        <Difference minor={differenceMinor} />
      </p>
    </details>
  )
}

/** How much more or less the lines come to. */
function Difference({ minor: difference }: { minor: Minor }) {
  const { words, formats } = useShop()
  const { priceBook } = words
  const amount = formats.money(minor(Math.abs(difference)))
  if (difference === 0) return priceBook.same
  return priceBook.difference(difference > 0 ? priceBook.more(amount) : priceBook.less(amount))
}
