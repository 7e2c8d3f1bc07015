import { useEffect } from 'react'
import { parseMinor } from '../../../core/money/minor.ts'
import { chargesTax } from '../../../core/shop/tax-rules.ts'
import { useEntry } from '../../parts/entry.ts'
import { DecimalField, Tick } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { useBook } from '../book/use-book.ts'
import { LineEditor } from '../line-editor.tsx'
import type { Repair } from '../repair.ts'
import { sumsOf, type TypedLine, useMoneyLines } from '../typed-line.ts'
import { Quoted } from './quoted.tsx'
import type { EstimateSheet } from './sheet.ts'
import { isAgreed, startingLines } from './starting-lines.ts'

interface SectionProps {
  readonly view: Repair
  /** Where its fields stand in the request; '' at the top. */
  readonly path: string
  readonly sheet: EstimateSheet
}

/** What is written of one repair: its lines, how far they may go, and whether they add to what is agreed. */
export function SectionFields({ view, path, sheet }: SectionProps) {
  const shop = useShop()
  const { words, settings } = shop
  const { estimateForm } = words.repair
  const { id, number } = view.repair
  const agreed = isAgreed(view)
  const book = useBook(view)
  const entry = useEntry({ supplement: agreed, high: '' }, path)
  const lines = useMoneyLines(
    startingLines(view, book, settings.prices.benchRate, words),
    path ? `${path}.lines` : 'lines',
  )
  const sums = sumsOf(lines, shop)
  const { supplement, high } = entry.value
  const upper = parseMinor(high.trim(), settings.place.currency, 'high')
  const { put, drop } = sheet
  const foundFor = ({ findingId }: TypedLine) => {
    const found = view.bench.findings.find(({ id: finding }) => finding === findingId)
    return found && estimateForm.found(found.text)
  }
  useEffect(() =>
    put(
      number,
      () => ({ repairId: id, supplement, lines: lines.written(), high: high.trim() || null }),
      sums,
    ),
  )
  useEffect(() => () => drop(number), [drop, number])
  return (
    <>
      <LineEditor view={view} lines={lines} beside={foundFor} />
      {sums && !supplement && (
        <Quoted
          view={view}
          totalMinor={sums.taxInclusive}
          highMinor={upper.ok && high.trim() ? upper.value : null}
        />
      )}
      <div className="form one-figure">
        <DecimalField
          label={estimateForm.high}
          hint={estimateForm.highHint(chargesTax(settings.tax))}
          unit={settings.place.currency}
          {...entry.at('high')}
        />
      </div>
      {agreed && <Tick label={estimateForm.supplement} {...entry.at('supplement')} />}
    </>
  )
}
