import { civilDateOf } from '../../core/calendar/zone.ts'
import type { WaitReason } from '../../core/vocabulary/work.ts'
import { answer, api } from '../api.ts'
import { ActButton, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, TextField } from '../parts/field.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import type { Card } from './bench.ts'

/** What the repair waits for and waited for. */
export function WaitsSection({ view }: { view: Repair }) {
  const { waits } = useShop().words.bench
  const rows = view.bench.waits
  const asked = view.bench.findings.filter(finding => finding.unanswered)
  return (
    <Section title={waits.heading}>
      {rows.length + asked.length === 0 && <p className="quiet">{waits.none}</p>}
      <ul className="lines">
        {asked.map(finding => (
          <Asked key={finding.id} finding={finding} />
        ))}
        {rows.map(row => (
          <Wait key={row.id} row={row} />
        ))}
      </ul>
      <Opened label={waits.add}>{close => <WaitForm view={view} close={close} />}</Opened>
    </Section>
  )
}

/** A wait that a finding makes of itself, until the owner's word is recorded. */
function Asked({ finding }: { finding: Card['findings'][number] }) {
  const { words, formats, settings } = useShop()
  const { waits } = words.bench
  const since = formats.shortDate(civilDateOf(finding.at, settings.place.timeZone))
  return (
    <li>
      <b>{words.waitReasons.owner}</b> {waits.onFinding(finding.text)} · {waits.since(since)}
    </li>
  )
}

function Wait({ row }: { row: Card['waits'][number] }) {
  const { words, formats, settings } = useShop()
  const { waits } = words.bench
  const day = (at: string) => formats.shortDate(civilDateOf(at, settings.place.timeZone))
  const act = useAct((input: { waitId: number }) => answer(api.bench.endWait.$post({ json: input })), {
    said: () => waits.ended,
  })
  const what = words.waitReasons[row.reason]
  return (
    <li>
      <b>{what}</b>
      {row.note && `: ${row.note}`} ·{' '}
      {row.untilAt ? waits.until(day(row.fromAt), day(row.untilAt)) : waits.since(day(row.fromAt))}{' '}
      {!row.untilAt && (
        <ActButton act={act} input={{ waitId: row.id }} look="second">
          {waits.endOf(what)}
        </ActButton>
      )}
    </li>
  )
}

function WaitForm({ view, close }: { view: Repair; close: () => void }) {
  const { words } = useShop()
  const { waits } = words.bench
  const entry = useEntry({ reason: 'parts' as WaitReason, note: '' })
  const act = useAct(
    (input: { repairId: number; reason: WaitReason; note: string }) =>
      answer(api.bench.wait.$post({ json: input })),
    { said: () => waits.said, after: close },
  )
  return (
    <OpenForm
      act={act}
      input={() => ({ repairId: view.repair.id, ...entry.value })}
      label={waits.add}
      send={waits.send}
      close={close}
    >
      <Choice label={waits.reason} choices={words.waitReasons} {...entry.at('reason')} />
      <TextField label={waits.note} {...entry.at('note')} />
    </OpenForm>
  )
}
