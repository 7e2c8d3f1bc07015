import '../estimate/estimate.css'
import { useState } from 'react'
import { answer, api } from '../../api.ts'
import { useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { TextArea } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { JoinedRepairs, joinedBefore } from '../estimate/joined-repairs.tsx'
import { SectionFields } from '../estimate/section-fields.tsx'
import { useEstimateSheet } from '../estimate/sheet.ts'
import { isAgreed } from '../estimate/starting-lines.ts'
import { type ActProps, lastEstimate } from '../repair.ts'

/** Writes an estimate, a new version of it, or a supplement once there is a go-ahead; for several clocks of the owner where wished. */
export function WriteEstimate({ view, close }: ActProps) {
  const { words, formats, settings } = useShop()
  const { estimateForm } = words.repair
  const sheet = useEstimateSheet()
  const [joined, setJoined] = useState<readonly number[]>(() => joinedBefore(view))
  const entry = useEntry({ remark: '' })
  const act = useAct(
    (input: Parameters<typeof api.estimates.write.$post>[0]['json']) =>
      answer(api.estimates.write.$post({ json: input })),
    { said: ({ number, totalMinor }) => estimateForm.said(number, formats.money(totalMinor)), after: close },
  )
  const input = () => ({
    ...sheet.read(view.repair.number),
    ...entry.value,
    others: joined.map(sheet.read),
    seen: { last: lastEstimate(view)?.version ?? null },
  })
  return (
    <ActPanel
      title={isAgreed(view) ? estimateForm.supplementTitle : estimateForm.title}
      act={act}
      input={input}
      send={estimateForm.send}
      close={close}
    >
      <SectionFields view={view} path="" sheet={sheet} />
      <JoinedRepairs view={view} sheet={sheet} joined={joined} onChange={setJoined} />
      {joined.length > 0 && sheet.totalMinor !== undefined && (
        <p className="together">
          {estimateForm.together} <b>{formats.money(sheet.totalMinor)}</b>
        </p>
      )}
      <div className="fields form">
        <TextArea label={estimateForm.remark} {...entry.at('remark')} />
      </div>
      <p className="quiet">{words.priceBook.valid(settings.estimate.validDays)}</p>
    </ActPanel>
  )
}
