import { answer, api } from '../../api.ts'
import { useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { DecimalField, TextArea, Tick } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { type Book, useBook } from '../book/use-book.ts'
import { LineEditor } from '../line-editor.tsx'
import type { ActProps, Repair } from '../repair.ts'
import { blankLine, type TypedLine, useMoneyLines } from '../typed-line.ts'

type Line = Repair['estimates'][number]['lines'][number]

/** The line of an earlier version: still the book's where the book says the same today, otherwise at the price that was told. */
function lineAgain(line: Line, book: Book): TypedLine {
  const { kind, description, quantity, unit, charge = '0', work = null, priced, partId, findingId } = line
  const again = { kind, description, quantity, unit, charge, work, priced, partId, findingId }
  // What a part costs may not be read yet; the ledger looks at it when the estimate is written.
  return priced?.from === 'part' || book.stillOf(again) ? again : { ...again, priced: null }
}

/** What was found at the strip and waits for the owner's word, a line each, where no estimate speaks of it yet. */
function foundLines({ bench, estimates }: Repair, benchRate: string): TypedLine[] {
  const written = estimates.flatMap(({ lines }) => lines.map(({ findingId }) => findingId))
  return bench.findings
    .filter(({ id, needsWord, struckReason }) => needsWord && !struckReason && !written.includes(id))
    .map(({ id, text }) => ({
      ...blankLine,
      description: text.replaceAll(/\s+/g, ' ').slice(0, 400),
      unit: benchRate,
      findingId: id,
    }))
}

/** Writes an estimate, a new version of it, or a supplement once there is a go-ahead. */
export function WriteEstimate({ view, close }: ActProps) {
  const { words, formats, settings } = useShop()
  const { estimateForm } = words.repair
  const agreed = view.words.some(({ answer: said }) => said === 'go-ahead')
  const book = useBook(view)
  const entry = useEntry({ supplement: agreed, high: '', remark: '' })
  const lines = useMoneyLines(
    agreed
      ? foundLines(view, settings.prices.benchRate)
      : (view.estimates.at(-1)?.lines ?? []).map(line => lineAgain(line, book)),
  )
  const act = useAct(
    (input: Parameters<typeof api.estimates.write.$post>[0]['json']) =>
      answer(api.estimates.write.$post({ json: input })),
    { said: ({ number, totalMinor }) => estimateForm.said(number, formats.money(totalMinor)), after: close },
  )
  const input = () => ({
    repairId: view.repair.id,
    supplement: entry.value.supplement,
    lines: lines.written(),
    high: entry.value.high.trim() || null,
    remark: entry.value.remark,
  })
  return (
    <ActPanel
      title={entry.value.supplement ? estimateForm.supplementTitle : estimateForm.title}
      act={act}
      input={input}
      send={estimateForm.send}
      close={close}
    >
      <LineEditor view={view} lines={lines} />
      <div className="fields form">
        <DecimalField
          label={estimateForm.high}
          hint={estimateForm.highHint}
          unit={settings.place.currency}
          {...entry.at('high')}
        />
        <TextArea label={estimateForm.remark} {...entry.at('remark')} />
      </div>
      <p className="quiet">{words.priceBook.valid(settings.estimate.validDays)}</p>
      {agreed && <Tick label={estimateForm.supplement} {...entry.at('supplement')} />}
    </ActPanel>
  )
}
