import { answer, api } from '../api.ts'
import { ActButton, ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField } from '../parts/field.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { type Shop, useShop } from '../shop.tsx'

type Person = Shop['people'][number]

/** Who works here, who no longer does, and one more. */
export function People() {
  const { words, people } = useShop()
  const { people: said } = words.shop
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
          { label: said.standing, kind: 'text', cell: person => (person.active ? said.here : said.gone) },
          { label: words.shop.change, kind: 'figure', cell: person => <ComeOrGo person={person} /> },
        ]}
      />
      <h2>{said.addTitle}</h2>
      <AddPerson />
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

function AddPerson() {
  const { people: said } = useShop().words.shop
  const entry = useEntry({ name: '' })
  const act = useAct((json: { name: string }) => answer(api.shop.addPerson.$post({ json })), {
    said: (_, { name }) => said.added(name),
    after: entry.reset,
  })
  return (
    <ActForm act={act} input={() => entry.value} label={said.addTitle}>
      <div className="fields one-line">
        <TextField label={said.name} {...entry.at('name')} />
        <Send act={act} look="second">
          {said.add}
        </Send>
      </div>
    </ActForm>
  )
}
