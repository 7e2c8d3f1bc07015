import { useState } from 'react'
import { shownInitials } from '../../core/people/initials.ts'
import { answer, api } from '../api.ts'
import { ActButton, useAct } from '../parts/act.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'
import { AddPerson, ChangePerson, type Person } from './person-form.tsx'

/** Who works here and as what, who no longer does, and one more. */
export function People() {
  const { words, people, formats } = useShop()
  const { people: said } = words.shop
  const [changing, change] = useState<number | null>(null)
  const changed = people.find(({ id }) => id === changing)
  return (
    <>
      <p className="shop-intro">{said.intro}</p>
      <Ledger
        plain
        caption={said.list}
        groups={[{ title: '', rows: people }]}
        rowKey={person => person.id}
        empty={words.screens.who.nobody}
        columns={[
          { label: said.person, kind: 'entry', cell: person => <b>{person.name}</b> },
          { label: said.initials, kind: 'text', cell: shownInitials },
          { label: said.roles, kind: 'text', cell: ({ roles }) => roles.map(r => words.roles[r]).join(', ') },
          {
            label: said.benchHours,
            kind: 'figure',
            cell: ({ benchHours }) => benchHours && formats.quantity(benchHours),
          },
          { label: said.standing, kind: 'text', cell: person => (person.active ? said.here : said.gone) },
          {
            label: words.shop.change,
            kind: 'figure',
            cell: person => (
              <>
                <button type="button" className="plain" onClick={() => change(person.id)}>
                  {words.shop.change}
                  <span className="hidden-words"> {person.name}</span>
                </button>
                <ComeOrGo person={person} />
              </>
            ),
          },
        ]}
      />
      {changed ? (
        <ChangePerson key={changed.id} person={changed} onClose={() => change(null)} />
      ) : (
        <AddPerson />
      )}
    </>
  )
}

/** Records that a person has left, or is here again. */
function ComeOrGo({ person: { id, name, active } }: { person: Person }) {
  const { people: said } = useShop().words.shop
  const act = useAct(
    (json: { personId: number; active: boolean; seen: { active: boolean } }) =>
      answer(api.shop.setPersonActive.$post({ json })),
    { said: (_, { active: here }) => (here ? said.returned(name) : said.left(name)) },
  )
  return (
    <ActButton act={act} input={{ personId: id, active: !active, seen: { active } }} look="plain">
      {active ? said.leave : said.return}
      <span className="hidden-words"> {active ? said.leaveOf(name) : said.returnOf(name)}</span>
    </ActButton>
  )
}
