import { type LineKind, lineKinds } from '../../core/pricing/kinds/index.ts'
import { priced } from '../../core/pricing/price.ts'
import { RemoveLine } from '../counter/take-in-condition.tsx'
import { type LinesState, useLines } from '../parts/entry.ts'
import { Choice, DecimalField, TextField } from '../parts/field.tsx'
import { type Shop, useShop } from '../shop.tsx'
import { Sums } from './money-lines.tsx'

/** A line of an estimate or an invoice as typed. */
export interface TypedLine {
  readonly kind: LineKind
  readonly description: string
  readonly quantity: string
  readonly unit: string
}

const isBlank = ({ description, quantity, unit }: TypedLine) => !description && quantity === '1' && !unit

const blank: TypedLine = { kind: 'labour', description: '', quantity: '1', unit: '' }

/** The lines being typed, beginning with `initial`. */
export const useMoneyLines = (initial: readonly TypedLine[]): LinesState<TypedLine> =>
  useLines('lines', blank, isBlank, initial)

/** What the typed lines come to under the shop's rules; nothing while a figure in them cannot be read. */
export function sumsOf(lines: LinesState<TypedLine>, { settings }: Shop) {
  const { byKind, ...tax } = settings.tax
  const written = lines.lines
    .filter(one => !one.blank)
    .map(({ line }) => ({ ...line, taxes: byKind[line.kind] }))
  const sums = priced({ currency: settings.place.currency, tax, lines: written })
  return written.length > 0 && sums.ok ? sums.value : undefined
}

/** Lines of work and goods, typed one after the other, with their sum below. Labour starts from the shop's bench rate. */
export function LineEditor({ lines }: { lines: LinesState<TypedLine> }) {
  const shop = useShop()
  const sums = sumsOf(lines, shop)
  return (
    <>
      <div className="lines">
        {lines.lines.map(({ key, blank }, index) => (
          <LineFields key={key} lines={lines} index={index} blank={blank} />
        ))}
      </div>
      {sums && <Sums priced={sums} />}
    </>
  )
}

function LineFields({
  lines,
  index,
  blank,
}: {
  lines: LinesState<TypedLine>
  index: number
  blank: boolean
}) {
  const { words, settings } = useShop()
  const { repair, papers } = words
  const hideLabel = index > 0
  const kinds = Object.fromEntries(
    Object.keys(lineKinds).map(kind => [kind, papers.lines.kinds[kind as LineKind]]),
  )
  const description = lines.at(index, 'description')
  const describe = (text: string) => {
    const { kind, unit } = lines.lines[index]?.line ?? { kind: 'labour', unit: '' }
    lines.set(index, {
      description: text,
      ...(kind === 'labour' && !unit ? { unit: settings.prices.benchRate } : {}),
    })
  }
  return (
    <fieldset className="line-fields money-fields">
      <legend className="hidden-words">{repair.estimateForm.lineOf(index + 1)}</legend>
      <Choice label={repair.kind} hideLabel={hideLabel} choices={kinds} {...lines.at(index, 'kind')} />
      <TextField label={repair.work} hideLabel={hideLabel} {...description} onChange={describe} />
      <DecimalField label={repair.quantity} hideLabel={hideLabel} {...lines.at(index, 'quantity')} />
      <DecimalField label={repair.unit} hideLabel={hideLabel} {...lines.at(index, 'unit')} />
      {!blank && (
        <RemoveLine what={repair.estimateForm.lineOf(index + 1)} onRemove={() => lines.remove(index)} />
      )}
    </fieldset>
  )
}
