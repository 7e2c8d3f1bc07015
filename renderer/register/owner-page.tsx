import { useQuery } from '@tanstack/react-query'
import type { ComponentType } from 'react'
import { Link, useLocation } from 'wouter'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { clockMarks, clockWords } from '../clock-words.ts'
import { Asked } from '../parts/asked.tsx'
import { CivilDate, Money } from '../parts/figures.tsx'
import { Entry, Ledger } from '../parts/ledger.tsx'
import { Facts, Page, Section, type Sum } from '../parts/page.tsx'
import { More } from '../parts/pane.tsx'
import { Standing } from '../parts/standing.tsx'
import { useShop } from '../shop.tsx'
import { AddClock } from './clock-form.tsx'
import { AddContact, Contacts } from './contacts.tsx'
import { ForgetOwner } from './forget-owner.tsx'
import { MergeOwner } from './merge-owner.tsx'
import { type Owner, type OwnerProps, ownerQuery } from './owner.ts'
import { ChangeOwner } from './owner-form.tsx'

/** The forms of an owner's page by the last part of their address. */
const forms: Readonly<Record<string, ComponentType<OwnerProps>>> = {
  change: ChangeOwner,
  contact: AddContact,
  clock: AddClock,
  merge: MergeOwner,
  forget: ForgetOwner,
}

/** One owner: how to reach them, their clocks now, every repair. */
export function OwnerPage({ id, act }: { id: string; act: string | undefined }) {
  const { register } = useShop().words
  const query = useQuery(ownerQuery(Number(id)))
  return (
    <Asked query={query} title={register.name}>
      {view => <Shown view={view} act={act} />}
    </Asked>
  )
}

function useSums({ clocks, repairs, dueMinor }: Owner): Sum[] {
  const { owner } = useShop().words.register
  return [
    { figure: clocks.length, words: owner.clocksSum(clocks.length) },
    { figure: repairs.length, words: owner.repairsSum(repairs.length) },
    ...(dueMinor > 0 ? [{ figure: <Money minor={dueMinor} sign />, words: owner.dueSum }] : []),
    ...(dueMinor < 0 ? [{ figure: <Money minor={-dueMinor} sign />, words: owner.heldSum }] : []),
  ]
}

function Shown({ view, act }: { view: Owner; act: string | undefined }) {
  const { words, formats, settings } = useShop()
  const [, navigate] = useLocation()
  const { owner, mergedInto } = view
  const Form = act === undefined || mergedInto ? undefined : forms[act]
  const since = formats.date(civilDateOf(owner.sinceAt, settings.place.timeZone))
  return (
    <Page title={owner.name} subtitle={words.register.owner.since(since)} sums={useSums(view)}>
      {mergedInto ? <Merged into={mergedInto} /> : <NextActs owner={owner} doing={act} />}
      {Form && <Form key={act} view={view} close={() => navigate(`/register/owner/${owner.id}`)} />}
      <Section title={words.register.owner.reach}>
        <Contacts view={view} />
        <Facts
          facts={[
            [
              words.register.owner.address,
              owner.address && <span className="several-lines">{owner.address}</span>,
            ],
            [words.register.owner.country, owner.country],
            [words.register.owner.notes, owner.notes && <span className="several-lines">{owner.notes}</span>],
          ]}
        />
      </Section>
      <Clocks view={view} />
      <Repairs view={view} />
      {!view.mergedInto && (
        <Section title={words.accounts.parts.papers}>
          <p>
            <Link href={`/accounts/owner/${owner.id}`}>{words.register.owner.account}</Link>
          </p>
        </Section>
      )}
    </Page>
  )
}

function Merged({ into }: { into: { id: number; name: string } }) {
  const { owner } = useShop().words.register
  return (
    <p className="aside-words">
      {owner.merged(into.name)} <Link href={`/register/owner/${into.id}`}>{owner.openMerged(into.name)}</Link>
    </p>
  )
}

/** The plain next act, and the others behind a quiet word; out of the way while a form is open. */
function NextActs({ owner: { id }, doing }: { owner: Owner['owner']; doing: string | undefined }) {
  const { owner } = useShop().words.register
  if (doing !== undefined) return null
  const others = [
    ['contact', owner.addContact],
    ['change', owner.change],
    ['clock', owner.addClock],
    ['merge', owner.merge],
    ['forget', owner.forget],
  ] as const
  return (
    <Section title={owner.next}>
      <div className="next-acts">
        <Link className="button" href={`/counter/take-in?of=${id}`}>
          {owner.takeIn}
        </Link>
        <More>
          <ul className="other-acts">
            {others.map(([act, said]) => (
              <li key={act}>
                <Link className="button second" href={`/register/owner/${id}/${act}`}>
                  {said}
                </Link>
              </li>
            ))}
          </ul>
        </More>
      </div>
    </Section>
  )
}

function Clocks({ view: { clocks } }: { view: Owner }) {
  const { words, settings } = useShop()
  const { owner } = words.register
  return (
    <Section title={owner.clocksNow}>
      <Ledger
        plain
        caption={owner.clocksNow}
        groups={[{ title: '', rows: clocks }]}
        rowKey={clock => clock.id}
        open={clock => `/register/clock/${clock.id}`}
        empty={owner.noClocks}
        columns={[
          {
            label: owner.clock,
            kind: 'entry',
            cell: clock => <Entry lead={clockWords(words, clock)} second={clockMarks(words, clock)} />,
          },
          {
            label: owner.sinceColumn,
            kind: 'figure',
            cell: clock => <CivilDate on={civilDateOf(clock.since, settings.place.timeZone)} />,
          },
        ]}
      />
    </Section>
  )
}

function Repairs({ view: { repairs } }: { view: Owner }) {
  const { words, settings } = useShop()
  const { owner } = words.register
  return (
    <Section title={owner.allRepairs}>
      <Ledger
        plain
        caption={owner.allRepairs}
        groups={[{ title: '', rows: repairs }]}
        rowKey={repair => repair.id}
        open={repair => `/counter/${repair.number}`}
        empty={owner.noRepairs}
        columns={[
          { label: owner.number, kind: 'number', cell: repair => repair.number },
          {
            label: owner.repair,
            kind: 'entry',
            cell: repair => (
              <Entry
                lead={clockWords(words, repair.clock)}
                rest={repair.comebackOfId !== null && repair.covered && owner.comeback}
                second={repair.fault}
              />
            ),
          },
          { label: owner.standing, kind: 'standing', cell: repair => <Standing stage={repair.stage} /> },
          {
            label: owner.taken,
            kind: 'figure',
            cell: repair => <CivilDate on={civilDateOf(repair.takenInAt, settings.place.timeZone)} />,
          },
        ]}
      />
    </Section>
  )
}
