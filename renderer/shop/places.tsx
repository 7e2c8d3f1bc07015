import type { PlaceKind } from '../../core/vocabulary/work.ts'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, TextField } from '../parts/field.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'

/** Where clocks are tested, in the order of the round, and one more. */
export function Places() {
  const { words, places } = useShop()
  const { places: said } = words.shop
  return (
    <>
      <p className="shop-intro">{said.intro}</p>
      <Ledger
        plain
        caption={said.list}
        groups={[{ title: '', rows: places }]}
        rowKey={place => place.id}
        empty={said.empty}
        columns={[
          { label: said.order, kind: 'text', cell: place => place.walkOrder },
          { label: said.place, kind: 'entry', cell: place => <b>{place.name}</b> },
          { label: said.kind, kind: 'text', cell: place => words.placeKinds[place.kind] },
        ]}
      />
      <h2>{said.addTitle}</h2>
      <AddPlace />
    </>
  )
}

function AddPlace() {
  const { words } = useShop()
  const { places: said } = words.shop
  const entry = useEntry({ name: '', kind: 'shelf' as PlaceKind })
  const act = useAct((json: { name: string; kind: PlaceKind }) => answer(api.shop.addPlace.$post({ json })), {
    said: (_, { name }) => said.added(name),
    after: () => entry.set({ name: '' }),
  })
  return (
    <ActForm act={act} input={() => entry.value} label={said.addTitle}>
      <div className="fields one-line">
        <TextField label={said.name} hint={said.nameHint} {...entry.at('name')} />
        <Choice label={said.kind} choices={words.placeKinds} {...entry.at('kind')} />
        <Send act={act} look="second">
          {said.add}
        </Send>
      </div>
    </ActForm>
  )
}
