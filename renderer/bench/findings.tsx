import { Link } from 'wouter'
import type { Component } from '../../core/vocabulary/intake.ts'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, TextArea, Tick } from '../parts/field.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import type { Card } from './bench.ts'
import { StrikeOut } from './strike-out.tsx'

interface Find {
  readonly repairId: number
  readonly component: Component
  readonly text: string
  readonly needsWord: boolean
}

/** What was found at the strip; what needs the owner's word leads to a supplement. */
export function FindingsSection({ view }: { view: Repair }) {
  const { words } = useShop()
  const { findings, card } = words.bench
  const rows = view.bench.findings
  const asked = rows.some(row => row.unanswered)
  return (
    <Section title={findings.heading}>
      {rows.length === 0 && <p className="quiet">{findings.none}</p>}
      <ul className="lines">
        {rows.map(row => (
          <Finding key={row.id} row={row} />
        ))}
      </ul>
      <div className="openers">
        <Opened label={findings.add}>{close => <FindForm view={view} close={close} />}</Opened>
        {asked && (
          <Link className="button second" href={`/counter/${view.repair.number}/write-estimate`}>
            {card.toSupplement}
          </Link>
        )}
      </div>
    </Section>
  )
}

function Finding({ row }: { row: Card['findings'][number] }) {
  const { words } = useShop()
  const what = words.components[row.component]
  const said = (
    <>
      <b>{what}</b>: <span className="several-lines">{row.text}</span>
    </>
  )
  if (row.struckReason)
    return (
      <li>
        <s>{said}</s> <small>{words.screens.struck(row.struckReason)}</small>
      </li>
    )
  return (
    <li>
      {said} <Word row={row} />{' '}
      <StrikeOut
        what={`${what}, ${row.text}`}
        send={reason => answer(api.bench.strikeFinding.$post({ json: { findingId: row.id, reason } }))}
      />
    </li>
  )
}

/** Whether the owner has still to say something on it, or has. */
function Word({ row }: { row: Card['findings'][number] }) {
  const { findings } = useShop().words.bench
  if (row.unanswered) return <em>{findings.asked}</em>
  return row.needsWord && <small className="quiet">{findings.answered}</small>
}

function FindForm({ view, close }: { view: Repair; close: () => void }) {
  const { words } = useShop()
  const { findings } = words.bench
  const entry = useEntry({ component: 'movement' as Component, text: '', needsWord: false })
  const act = useAct((input: Find) => answer(api.bench.find.$post({ json: input })), {
    said: (_, { needsWord }) => (needsWord ? findings.saidWaiting : findings.said),
    after: close,
  })
  return (
    <OpenForm
      act={act}
      input={() => ({ repairId: view.repair.id, ...entry.value })}
      label={findings.add}
      send={findings.send}
      close={close}
    >
      <Choice label={findings.component} choices={words.components} {...entry.at('component')} />
      <TextArea label={findings.text} {...entry.at('text')} />
      <Tick label={findings.needsWord} {...entry.at('needsWord')} />
    </OpenForm>
  )
}
