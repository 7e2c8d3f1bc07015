import { answer, api } from '../../api.ts'
import { useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { DecimalField, TextArea, Tick } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { LineEditor, type TypedLine, useMoneyLines } from '../line-editor.tsx'
import type { ActProps, Repair } from '../repair.ts'

/** A new version starts from the last one, unless it adds to what is agreed. */
const startingLines = ({ estimates }: Repair, supplement: boolean): readonly TypedLine[] =>
  supplement
    ? []
    : (estimates.at(-1)?.lines ?? []).map(({ kind, description, quantity, unit }) => ({
        kind,
        description,
        quantity,
        unit,
      }))

/** Writes an estimate, a new version of it, or a supplement once there is a go-ahead. */
export function WriteEstimate({ view, close }: ActProps) {
  const { words, formats, settings } = useShop()
  const { estimateForm } = words.repair
  const agreed = view.words.some(({ answer: said }) => said === 'go-ahead')
  const entry = useEntry({ supplement: agreed, high: '', remark: '' })
  const lines = useMoneyLines(startingLines(view, agreed))
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
      <LineEditor lines={lines} />
      <div className="fields form">
        <DecimalField
          label={estimateForm.high}
          hint={estimateForm.highHint}
          unit={settings.place.currency}
          {...entry.at('high')}
        />
        <TextArea label={estimateForm.remark} {...entry.at('remark')} />
      </div>
      {agreed && <Tick label={estimateForm.supplement} {...entry.at('supplement')} />}
    </ActPanel>
  )
}
