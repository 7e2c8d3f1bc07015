import { minorText } from '../../core/money/minor.ts'
import { isWithoutWork } from '../../core/standing/stages.ts'
import type { LinesState } from '../parts/entry.ts'
import { type Shop, useShop } from '../shop.tsx'
import { large } from './book/ask.ts'
import type { Repair } from './repair.ts'
import { blankLine, sumsOf, type TypedLine } from './typed-line.ts'

type Proposed = Repair['invoiceLines'][number]

const typed = ({ kind, description, quantity, unit, charge, work, partId }: Proposed): TypedLine => ({
  ...blankLine,
  kind,
  description,
  quantity,
  unit,
  charge,
  work,
  partId,
})

/** The fee told at the take-in, where the clock goes home without work or came for an estimate alone. */
function feeTold({ repair, quoted: { fee } }: Repair, { words, settings }: Shop): TypedLine[] {
  if (!fee || !isWithoutWork(repair)) return []
  const description = large(words.lineWorks['estimate-fee'])
  const unit = minorText(fee, settings.place.currency)
  return [{ ...blankLine, kind: 'fee', work: 'estimate-fee', description, unit }]
}

/** The lines an invoice starts from: those agreed, then the parts used beyond them; a fee told where there are none. */
export function useStartOfInvoice(view: Repair): TypedLine[] {
  const shop = useShop()
  return view.invoiceLines.length > 0 ? view.invoiceLines.map(typed) : feeTold(view, shop)
}

/** Where a line of an invoice comes from; nothing of one written by hand. */
export function useOrigin({ invoice }: Repair) {
  const { origins } = useShop().words.repair.invoiceForm
  const like = (line: TypedLine) => (one: Proposed) =>
    one.kind === line.kind &&
    one.partId === line.partId &&
    (one.description === line.description || (one.unit === line.unit && one.quantity === line.quantity))
  return (line: TypedLine): string | undefined => {
    if (invoice.agreed.some(like(line))) return origins.agreed
    const used = [...invoice.used, ...invoice.left.map(one => one.line)]
    return used.some(like(line)) ? origins.used : undefined
  }
}

interface LimitsProps {
  readonly view: Repair
  readonly lines: LinesState<TypedLine>
}

/** What was agreed and may be billed, a warning where the lines pass it, and the parts used that were left out. */
export function InvoiceLimits({ view: { limit, invoice }, lines }: LimitsProps) {
  const shop = useShop()
  const { words, formats } = shop
  const { invoiceForm } = words.repair
  const { agreedMinor, mostMinor } = limit
  const total = sumsOf(lines, shop)?.taxInclusive ?? 0
  const beyond = mostMinor !== null && total > mostMinor
  const there = lines.lines.map(one => one.line)
  const left = invoice.left.filter(
    ({ line }) => !there.some(one => one.partId === line.partId && one.unit === line.unit),
  )
  return (
    <>
      {agreedMinor !== null && mostMinor !== null && (
        <p role="status" className={beyond ? 'late' : 'quiet'}>
          {mostMinor > agreedMinor
            ? invoiceForm.limits(formats.money(agreedMinor), formats.money(mostMinor))
            : invoiceForm.limitFirm(formats.money(agreedMinor))}{' '}
          {beyond && invoiceForm.beyond}
        </p>
      )}
      {left.length > 0 && (
        <section aria-label={invoiceForm.left}>
          <p className="quiet">{invoiceForm.left}</p>
          <ul className="papers">
            {left.map(({ line, reason }) => (
              <li key={`${line.partId} ${line.unit}`}>
                {invoiceForm.leftPart(line.quantity, line.description, formats.unitPrice(line.unit))}{' '}
                <small className="quiet">{invoiceForm.reasons[reason]}</small>{' '}
                <button
                  type="button"
                  className="plain"
                  onClick={() => lines.set(lines.lines.length - 1, typed(line))}
                >
                  {invoiceForm.addPart(line.description)}
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  )
}
