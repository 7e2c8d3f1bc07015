import { useState } from 'react'
import { useLocation } from 'wouter'
import { answer } from '../../api.ts'
import { ActForm, Send, useAskedAct } from '../../parts/act.tsx'
import { Tick } from '../../parts/field.tsx'
import { Section } from '../../parts/page.tsx'
import { Reserved } from '../../parts/reserved.tsx'
import { useShop } from '../../shop.tsx'
import { BadLines } from './bad-lines.tsx'
import { found, rowsToEnter, type Taken } from './found.ts'
import { LikelyLines } from './likely-lines.tsx'
import type { CheckedLine } from './use-check.ts'

interface CheckedProps {
  readonly lines: readonly CheckedLine[]
  readonly reset: () => void
  readonly onEntered: () => void
}

/** What the check found, what a person decides about it, and then entering all of it or none. */
export function Checked({ lines, reset, onEntered }: CheckedProps) {
  const { words } = useShop()
  const { listImport: said } = words
  const [, navigate] = useLocation()
  const [without, setWithout] = useState(false)
  const [taken, setTaken] = useState<Taken>({})
  const { bad, fresh, known, likely } = found(lines)
  const act = useAskedAct(
    (ledger, json: { rows: ReturnType<typeof rowsToEnter> }) =>
      answer(ledger.register.import.$post({ json })),
    {
      said: ({ ownersEntered, clocksEntered }) => said.said(ownersEntered, clocksEntered),
      confirm: () => ({
        title: said.ask(fresh.length),
        body: <p>{said.asked}</p>,
        yesWords: said.enter(fresh.length),
      }),
      after: () => {
        reset()
        onEntered()
        navigate('/register')
      },
    },
  )
  const mayEnter = fresh.length > 0 && (bad.length === 0 || without)
  return (
    <Section title={said.checked}>
      <p role="status">{said.sums(fresh.length, known.length)}</p>
      <Reserved act="register.import">
        <ActForm act={act} input={() => ({ rows: rowsToEnter(lines, taken) })} className="form wide-form">
          {bad.length > 0 && <BadLines lines={bad} />}
          {likely.length > 0 && <LikelyLines lines={likely} taken={taken} onTake={setTaken} />}
          {bad.length > 0 && fresh.length > 0 && (
            <Tick name="without" label={said.leaveOut(bad.length)} value={without} onChange={setWithout} />
          )}
          {fresh.length === 0 && <p>{said.nothing}</p>}
          {mayEnter && (
            <div className="buttons">
              <Send act={act}>{act.busy ? said.writing : said.enter(fresh.length)}</Send>
            </div>
          )}
        </ActForm>
      </Reserved>
    </Section>
  )
}
