import type { FormEvent } from 'react'
import { useLocation } from 'wouter'
import { useEntry } from '../parts/entry.ts'
import { Choice, DateField, TextField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'

const names = ['area', 'personId', 'repair', 'from', 'to'] as const

/** What the day book is narrowed to, as it stands in the page's address; what does not matter is left out. */
export type Narrowed = Partial<Readonly<Record<(typeof names)[number], string>>>

export const narrowedBy = (asked: URLSearchParams): Narrowed =>
  Object.fromEntries(names.flatMap(name => (asked.get(name) ? [[name, asked.get(name)]] : [])))

/** Chooses what of the day book is shown: the part of the shop, who, which repair, which days. */
export function Narrow({ asked, place }: { asked: Narrowed; place: string }) {
  const { words, people } = useShop()
  const said = words.accounts.dayBook
  const [, navigate] = useLocation()
  const entry = useEntry({ area: '', personId: '', repair: '', from: '', to: '', ...asked })
  const show = (event: FormEvent) => {
    event.preventDefault()
    const wanted = Object.entries(entry.value).filter(([, value]) => value.trim() !== '')
    navigate(wanted.length > 0 ? `${place}?${new URLSearchParams(wanted)}` : place)
  }
  return (
    <form className="narrowing" aria-label={said.narrow} onSubmit={show} noValidate>
      <div className="from-to">
        <Choice label={said.area} choices={said.areas} empty={said.all} {...entry.at('area')} />
        <Choice
          label={said.who}
          choices={Object.fromEntries(people.map(({ id, name }) => [id, name]))}
          empty={said.everybody}
          {...entry.at('personId')}
        />
        <TextField label={said.repairNumber} inputMode="numeric" {...entry.at('repair')} />
        <DateField label={said.from} {...entry.at('from')} />
        <DateField label={said.to} {...entry.at('to')} />
        <button type="submit" className="second">
          {said.show}
        </button>
        {Object.keys(asked).length > 0 && (
          <button type="button" className="plain" onClick={() => navigate(place)}>
            {said.showAll}
          </button>
        )}
        <button type="button" className="plain" onClick={() => print()}>
          {said.print}
        </button>
      </div>
    </form>
  )
}
