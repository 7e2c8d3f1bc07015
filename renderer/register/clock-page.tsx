import { useQuery } from '@tanstack/react-query'
import type { ComponentType } from 'react'
import { Link, useLocation } from 'wouter'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { beatsWords, clockMarks, clockWords, seenWords } from '../clock-words.ts'
import { Asked } from '../parts/asked.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { CivilDate } from '../parts/figures.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { useMeasures } from '../parts/measures.tsx'
import { Facts, Page, Section } from '../parts/page.tsx'
import { More } from '../parts/pane.tsx'
import { useShop } from '../shop.tsx'
import { type ClockProps, type ClockView, clockQuery } from './clock.ts'
import { ChangeClock } from './clock-form.tsx'
import { MeasureClock } from './measure-clock.tsx'
import { PassClock } from './pass-clock.tsx'
import { Visits } from './visits.tsx'
import { WarrantyToday } from './warranty-today.tsx'

/** The forms of a clock's page by the last part of their address. */
const forms: Readonly<Record<string, ComponentType<ClockProps>>> = {
  change: ChangeClock,
  measure: MeasureClock,
  pass: PassClock,
}

/** One clock: its warranty today, what it is, whose it was, every visit. */
export function ClockPage({ id, act }: { id: string; act: string | undefined }) {
  const { register } = useShop().words
  const query = useQuery(clockQuery(Number(id)))
  return (
    <Asked query={query} title={register.owner.clock}>
      {view => <Shown view={view} act={act} />}
    </Asked>
  )
}

function Shown({ view, act }: { view: ClockView; act: string | undefined }) {
  const { words } = useShop()
  const [, navigate] = useLocation()
  const { clock, owners } = view
  const Form = act === undefined ? undefined : forms[act]
  const now = owners.find(({ untilAt }) => untilAt === null)
  return (
    <Page
      title={clockMarks(words, clock) || clockWords(words, clock)}
      subtitle={now && <Link href={`/register/owner/${now.ownerId}`}>{now.name}</Link>}
      sums={[{ figure: view.visits.length, words: words.register.owner.repairsSum(view.visits.length) }]}
    >
      <WarrantyToday view={view} />
      {Form && <Form key={act} view={view} close={() => navigate(`/register/clock/${clock.id}`)} />}
      <Description view={view} doing={act} />
      <Visits view={view} />
      <Owners view={view} />
    </Page>
  )
}

function Description({ view: { clock, cautions }, doing }: { view: ClockView; doing: string | undefined }) {
  const { words, formats } = useShop()
  const { saidBox, saidWeight } = useMeasures()
  const said = words.register.clock
  const listed = (parts: readonly (string | false | null)[]) => parts.filter(Boolean).join(', ')
  return (
    <Section title={said.description}>
      <Facts
        facts={[
          [said.form, clockWords(words, clock)],
          [said.maker, clock.maker],
          [said.serial, clock.serial],
          [said.marks, clock.marks],
          [
            said.movement,
            listed([
              seenWords(words.powers, clock.power),
              seenWords(words.escapements, clock.escapement),
              seenWords(words.strikes, clock.strike),
              clock.chime !== 'none' && seenWords(words.chimes, clock.chime),
              beatsWords(words, formats, clock.beats),
            ]) || words.notLookedAt,
          ],
          [
            said.also,
            listed([
              clock.chimeCorrects && said.chimeCorrects,
              clock.jewelled && said.jewelled,
              clock.luminous && said.luminous,
              clock.mercury && said.mercury,
              clock.mains && said.mains,
            ]),
          ],
          [words.measures.size, listed([saidBox(clock), saidWeight(clock.weightG)])],
          [said.notes, clock.notes && <span className="several-lines">{clock.notes}</span>],
        ]}
      />
      <Cautions codes={cautions} />
      {doing === undefined && (
        <More>
          <ul className="other-acts">
            <li>
              <Link className="button second" href={`/register/clock/${clock.id}/pass`}>
                {said.pass}
              </Link>
            </li>
            <li>
              <Link className="button second" href={`/register/clock/${clock.id}/measure`}>
                {words.measures.open}
              </Link>
            </li>
            <li>
              <Link className="button second" href={`/register/clock/${clock.id}/change`}>
                {said.change}
              </Link>
            </li>
          </ul>
        </More>
      )}
    </Section>
  )
}

function Owners({ view: { owners } }: { view: ClockView }) {
  const { words, settings } = useShop()
  const said = words.register.clock
  const day = (at: string | null) => at && civilDateOf(at, settings.place.timeZone)
  return (
    <Section title={said.owners}>
      <Ledger
        plain
        caption={said.owners}
        groups={[{ title: '', rows: owners.map((owner, index) => ({ ...owner, index })) }]}
        rowKey={row => row.index}
        empty={said.noOwner}
        columns={[
          {
            label: said.owner,
            kind: 'entry',
            cell: row => <Link href={`/register/owner/${row.ownerId}`}>{row.name}</Link>,
          },
          { label: said.from, kind: 'figure', cell: row => <CivilDate on={day(row.fromAt)} /> },
          {
            label: said.until,
            kind: 'figure',
            cell: row => (row.untilAt ? <CivilDate on={day(row.untilAt)} /> : said.now),
          },
        ]}
      />
    </Section>
  )
}
