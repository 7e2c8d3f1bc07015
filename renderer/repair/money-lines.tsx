import type { Minor } from '../../core/money/minor.ts'
import type { LineKind } from '../../core/pricing/kinds/index.ts'
import type { Priced } from '../../core/pricing/price.ts'
import type { Words } from '../../core/words/en/index.ts'
import { Figure, Money, UnitPrice } from '../parts/figures.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'

interface Step {
  readonly code: string
  readonly values: Readonly<Record<string, string | number>>
}

/** A priced line as estimates and invoices carry it. */
export interface ShownLine {
  readonly kind: LineKind
  readonly description: string
  readonly quantity: string
  readonly unit: string
  readonly net: number
  readonly working: readonly Step[]
}

/** How a line's figure came about, in a sentence; a step without a sentence is left out. */
export function workingWords(
  { workingSteps }: Pick<Words, 'workingSteps'>,
  working: readonly Step[],
): string {
  const steps: Readonly<Record<string, (values: Step['values']) => string>> = workingSteps
  return working.flatMap(({ code, values }) => steps[code]?.(values) ?? []).join(', ')
}

/** How a line's figure came about, folded until asked for; nothing where there is nothing to tell. */
export function Working({ of, working }: { of: string; working: readonly Step[] }) {
  const { words } = useShop()
  const said = workingWords(words, working)
  if (!said) return null
  return (
    <details className="working">
      <summary>
        {words.priceBook.working}
        <span className="hidden-words"> ({of})</span>
      </summary>
      <small>{said}</small>
    </details>
  )
}

/** Lines of work and goods with their sums below, double-ruled. */
export function MoneyLines(props: { caption: string; lines: readonly ShownLine[]; priced: Priced }) {
  const { words } = useShop()
  const { repair, papers } = words
  return (
    <div className="money-lines">
      <Ledger
        plain
        caption={props.caption}
        groups={[{ title: '', rows: props.lines.map((line, index) => ({ ...line, index })) }]}
        rowKey={line => line.index}
        empty={repair.noEstimates}
        columns={[
          { label: repair.kind, kind: 'text', cell: line => papers.lines.kinds[line.kind] },
          {
            label: repair.work,
            kind: 'entry',
            cell: line => (
              <>
                {line.description}
                <Working of={line.description} working={line.working} />
              </>
            ),
          },
          { label: repair.quantity, kind: 'figure', cell: line => <Figure value={line.quantity} /> },
          { label: repair.unit, kind: 'figure', cell: line => <UnitPrice value={line.unit} /> },
          { label: repair.net, kind: 'figure', cell: line => <Money minor={line.net} /> },
        ]}
      />
      <Sums priced={props.priced} />
    </div>
  )
}

/** The sums of a priced document: lines, each tax, the total. */
export function Sums({ priced }: { priced: Priced }) {
  const { words, formats } = useShop()
  const { repair } = words
  const line = (name: string, minor: Minor, last = false) => (
    <div key={name} className={last ? 'total' : undefined}>
      <dt>{name}</dt>
      <dd>
        <Money minor={minor} />
      </dd>
    </div>
  )
  return (
    <dl className="sums-below">
      {line(repair.sum, priced.taxExclusive)}
      {priced.taxes.map(tax => line(repair.tax(tax.code, formats.percent(tax.rate)), tax.tax))}
      {line(repair.total, priced.taxInclusive, true)}
    </dl>
  )
}
