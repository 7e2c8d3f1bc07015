import { type LineKind, lineKinds } from '../../core/pricing/kinds/index.ts'
import type { LinesState } from '../parts/entry.ts'
import { Choice, DecimalField } from '../parts/field.tsx'
import { RemoveLine } from '../parts/remove-line.tsx'
import { useShop } from '../shop.tsx'
import { FromBook, focusLater } from './book/from-book.tsx'
import { useBook } from './book/use-book.ts'
import { LongLine } from './long-line.tsx'
import { Sums, Working } from './money-lines.tsx'
import type { Repair } from './repair.ts'
import { blankLine, sumsOf, type TypedLine } from './typed-line.ts'

interface EditorProps {
  readonly view: Repair
  readonly lines: LinesState<TypedLine>
  /** What stands beside a line, where there is anything to say of it. */
  readonly beside?: ((line: TypedLine) => string | undefined) | undefined
}

/** Lines of work and goods, typed one after the other or taken from the price book, with their sum below. */
export function LineEditor({ view, lines, beside }: EditorProps) {
  const sums = sumsOf(lines, useShop())
  const take = (line: TypedLine) => {
    const index = lines.lines.length - 1
    lines.set(index, line)
    return { number: index + 1, name: lines.at(index, 'description').name }
  }
  return (
    <>
      <div className="lines">
        {lines.lines.map(({ key, blank }, index) => (
          <LineFields key={key} view={view} lines={lines} beside={beside} index={index} blank={blank} />
        ))}
      </div>
      <FromBook view={view} onTake={take} />
      {sums && <Sums priced={sums} />}
    </>
  )
}

/** A figure changed by hand is no longer the book's. */
const byHand = { priced: null, charge: '0' } as const

/** The bindings of a line's controls, each with what changes along with it. Labour starts from the shop's bench rate. */
function useLine(lines: LinesState<TypedLine>, index: number) {
  const { benchRate } = useShop().settings.prices
  const line = lines.lines[index]?.line ?? blankLine
  const also = <K extends keyof TypedLine & string>(
    key: K,
    more: (value: TypedLine[K]) => Partial<TypedLine>,
  ) => ({
    ...lines.at(index, key),
    onChange: (value: TypedLine[K]) => lines.set(index, { ...more(value), [key]: value }),
  })
  return {
    line,
    kind: also('kind', () => ({ ...byHand, work: null, partId: null })),
    description: also('description', () =>
      line.kind === 'labour' && !line.unit && !line.priced ? { unit: benchRate } : {},
    ),
    quantity: also('quantity', () => byHand),
    unit: also('unit', () => byHand),
  }
}

function LineFields({ view, lines, beside, index, blank }: EditorProps & { index: number; blank: boolean }) {
  const { words } = useShop()
  const { repair, papers } = words
  const hideLabel = index > 0
  const kinds = Object.fromEntries(
    Object.keys(lineKinds).map(kind => [kind, papers.lines.kinds[kind as LineKind]]),
  )
  const { line, kind, description, quantity, unit } = useLine(lines, index)
  const told = useBook(view).stillOf(line)
  const note = blank ? undefined : beside?.(line)
  const name = repair.estimateForm.lineOf(index + 1)
  const remove = () => {
    lines.remove(index)
    focusLater(lines.at(index, 'description').name)
  }
  return (
    <fieldset className="line-fields money-fields">
      <legend className="hidden-words">{name}</legend>
      <Choice label={repair.kind} hideLabel={hideLabel} choices={kinds} {...kind} />
      <LongLine label={repair.work} hideLabel={hideLabel} {...description} />
      <DecimalField label={repair.quantity} hideLabel={hideLabel} {...quantity} />
      <DecimalField label={repair.unit} hideLabel={hideLabel} {...unit} />
      {!blank && <RemoveLine what={name} onRemove={remove} />}
      {note && <p className="beside-line quiet">{note}</p>}
      {told && <Working of={name} working={told.working} />}
    </fieldset>
  )
}
