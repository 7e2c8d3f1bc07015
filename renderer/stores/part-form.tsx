import { useQuery } from '@tanstack/react-query'
import { useId } from 'react'
import { minorText } from '../../core/money/minor.ts'
import { partPrice } from '../../core/pricing/cost-price.ts'
import { type Dimension, dimensions } from '../../core/stores/part-size.ts'
import type { PartKind, SpringEnd } from '../../core/vocabulary/work.ts'
import { type Bound, type EntryState, type LinesState, useEntry, useLines } from '../parts/entry.ts'
import { Choice, DecimalField, TextField } from '../parts/field.tsx'
import { neededNumber } from '../parts/typed.ts'
import { useShop } from '../shop.tsx'
import { type PartView, storesQuery } from './stores.ts'

interface SizeLine {
  /** Empty until the line is written on: it offers the next usual one of the part’s kind. */
  readonly dimension: Dimension | ''
  readonly value: string
  readonly unit: 'mm' | 'in'
}

interface PartTyped {
  readonly kind: PartKind
  readonly name: string
  readonly ends: SpringEnd | ''
  readonly vendor: string
  readonly keptAt: string
  readonly unitCost: string
  readonly unitPrice: string
  readonly reorderAt: string
}

/** Dimensions a kind of part is told by, in the order they are told. Common practice. */
const usual: Record<PartKind, readonly Dimension[]> = {
  mainspring: ['height', 'thickness', 'length', 'barrel'],
  suspension: ['thickness', 'width', 'length'],
  line: ['diameter', 'length'],
  bushing: ['bore', 'outside', 'height'],
  glass: ['diameter', 'thickness'],
  hands: ['length', 'bore'],
  'pivot-steel': ['diameter', 'length'],
  consumable: [],
  other: [],
}

/** Every dimension, those a kind of part is usually told by first. */
const inOrder = (kind: PartKind): readonly Dimension[] => [
  ...usual[kind],
  ...dimensions.filter(one => !usual[kind].includes(one)),
]

/** The dimension of each line: the one it has, otherwise the next that no line tells yet. */
function dimensionsOf(kind: PartKind, lines: readonly SizeLine[]): readonly Dimension[] {
  const told = new Set(lines.map(line => line.dimension))
  const left = inOrder(kind).filter(one => !told.has(one))
  return lines.map(({ dimension }) => dimension || (left.shift() ?? 'height'))
}

/** A part as it is typed: its facts and its sizes. */
export function usePartEntry(initial: PartTyped, sizes: readonly SizeLine[]) {
  const { settings } = useShop()
  const unit = settings.place.units
  const entry = useEntry(initial)
  const lines = useLines<SizeLine>(
    'sizes',
    { dimension: '', value: '', unit },
    line => line.value.trim() === '',
    sizes,
  )
  return {
    entry,
    lines,
    /** As the request takes it. */
    input: () => ({
      ...entry.value,
      unitCost: entry.value.unitCost.trim() || '0',
      unitPrice: entry.value.unitPrice.trim() || '0',
      reorderAt: neededNumber(entry.value.reorderAt || '0'),
      sizes: lines
        .written()
        .flatMap(({ dimension, ...size }) => (dimension === '' ? [] : [{ dimension, ...size }])),
    }),
  }
}

export const blankPart: PartTyped = {
  kind: 'mainspring',
  name: '',
  ends: '',
  vendor: '',
  keptAt: '',
  unitCost: '',
  unitPrice: '',
  reorderAt: '0',
}

/** The part on record as it would be typed. */
export const partTyped = (
  { part }: PartView,
  vendor: string,
  major: (minor: number) => string,
): PartTyped => ({
  kind: part.kind,
  name: part.name,
  ends: part.ends,
  vendor,
  keptAt: part.keptAt,
  unitCost: major(part.unitCostMinor),
  unitPrice: major(part.unitPriceMinor),
  reorderAt: String(part.reorderAt),
})

interface FieldsProps {
  readonly entry: EntryState<PartTyped>
  readonly lines: LinesState<SizeLine>
}

/** The fields of a part; the sizes offered follow its kind. */
export function PartFields({ entry, lines }: FieldsProps) {
  const { words } = useShop()
  const { form } = words.stores
  const { data } = useQuery(storesQuery)
  const list = useId()
  return (
    <>
      <div className="fields">
        <Choice label={form.kind} choices={words.partKinds} {...entry.at('kind')} />
        <TextField label={form.name} {...entry.at('name')} />
        {entry.value.kind === 'mainspring' && (
          <Choice
            label={form.ends}
            choices={words.springEnds}
            empty={form.endsUnknown}
            {...entry.at('ends')}
          />
        )}
        <TextField label={form.vendor} hint={form.vendorHint} list={list} {...entry.at('vendor')} />
        <datalist id={list}>
          {data?.vendors.map(one => (
            <option key={one.id} value={one.name} />
          ))}
        </datalist>
        <TextField label={form.keptAt} {...entry.at('keptAt')} />
        <DecimalField label={form.unitCost} {...entry.at('unitCost')} />
        <DecimalField label={form.unitPrice} {...entry.at('unitPrice')} />
        <ByMarkup entry={entry} />
        <DecimalField label={form.reorderAt} hint={form.reorderHint} {...entry.at('reorderAt')} />
      </div>
      <fieldset className="lines">
        <legend className="group-label">{form.sizes}</legend>
        {lines.lines.map(({ key }, index) => (
          <SizeFields key={key} lines={lines} index={index} kind={entry.value.kind} />
        ))}
      </fieldset>
    </>
  )
}

/** The price the shop's own markup gives for the cost typed, to be taken with one press. */
function ByMarkup({ entry }: { entry: EntryState<PartTyped> }) {
  const { words, formats, settings } = useShop()
  const { form } = words.stores
  const { currency } = settings.place
  const { unitCost, unitPrice } = entry.value
  const price = unitCost.trim() === '' ? undefined : partPrice(settings.prices, unitCost, currency)
  if (!price?.ok) return null
  const said = formats.money(price.value.amount)
  const plain = minorText(price.value.amount, currency)
  return (
    <p className="field by-markup">
      {form.byMarkup(said)}
      {plain !== unitPrice && (
        <button type="button" className="second" onClick={() => entry.set({ unitPrice: plain })}>
          {form.takeMarkup(said)}
        </button>
      )}
    </p>
  )
}

function SizeFields({ lines, index, kind }: { lines: LinesState<SizeLine>; index: number; kind: PartKind }) {
  const { words } = useShop()
  const { form, dimensions: names, units } = words.stores
  const choices = Object.fromEntries(inOrder(kind).map(one => [one, names[one]]))
  const told = dimensionsOf(
    kind,
    lines.lines.map(({ line }) => line),
  )
  const dimension = told[index] ?? ''
  const offered: Bound<Dimension | ''> = { ...lines.at(index, 'dimension'), value: dimension }
  // What is typed is a size of the dimension that stood beside it.
  const size = {
    ...lines.at(index, 'value'),
    onChange: (value: string) => lines.set(index, { value, dimension }),
  }
  return (
    <div className="fields">
      <Choice label={form.dimension} choices={choices} {...offered} />
      <DecimalField label={form.sizeValue} {...size} />
      <Choice label={form.unit} choices={units} {...lines.at(index, 'unit')} />
    </div>
  )
}
