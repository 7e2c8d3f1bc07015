import type { MarkupTier } from '../../core/pricing/price-book.ts'
import { type LinesState, useLines } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { RemoveLine } from '../parts/remove-line.tsx'
import { useShop } from '../shop.tsx'

/** A tier as typed; no cost stands for any cost. */
interface TypedTier {
  readonly upToCost: string
  readonly percent: string
}

const blank: TypedTier = { upToCost: '', percent: '' }
const isBlank = ({ upToCost, percent }: TypedTier) => upToCost.trim() === '' && percent.trim() === ''

/** The tiers being typed, beginning with those of the book. */
export const useTiers = (tiers: readonly MarkupTier[]): LinesState<TypedTier> =>
  useLines(
    'prices.markup',
    blank,
    isBlank,
    tiers.map(({ upToCost, percent }) => ({ upToCost: upToCost ?? '', percent })),
  )

/** The tiers as they are sent. */
export const keptTiers = (tiers: LinesState<TypedTier>) =>
  tiers.written().map(({ upToCost, percent }) => ({ upToCost: upToCost.trim() || null, percent }))

/** What is added to a part's cost, by the cost; writing on the last line opens the next. */
export function MarkupTable({ tiers }: { tiers: LinesState<TypedTier> }) {
  return (
    <div className="book-lines">
      {tiers.lines.map(({ key, blank: last }, index) => (
        <TierLine key={key} tiers={tiers} index={index} last={last} />
      ))}
    </div>
  )
}

function TierLine({ tiers, index, last }: { tiers: LinesState<TypedTier>; index: number; last: boolean }) {
  const { words, settings } = useShop()
  const said = words.shop.prices
  const of = said.tierOf(index + 1)
  const labelled = (label: string) => (index === 0 ? label : `${label}, ${of}`)
  return (
    <div className="book-tier">
      <DecimalField
        label={labelled(said.upToCost)}
        hideLabel={index > 0}
        unit={settings.place.currency}
        {...tiers.at(index, 'upToCost')}
      />
      <DecimalField
        label={labelled(said.percent)}
        hideLabel={index > 0}
        unit="%"
        {...tiers.at(index, 'percent')}
      />
      {last ? <span /> : <RemoveLine what={of} onRemove={() => tiers.remove(index)} />}
    </div>
  )
}
