import { useRemembered } from '../remembered.ts'
import { useShop } from '../shop.tsx'

/** Who is at the counter: remembered here, written beside every act in the day book. */
export function Who() {
  const { people, words } = useShop()
  const [person, setPerson] = useRemembered('person')
  const here = people.filter(({ active }) => active)
  const known = here.some(({ id }) => String(id) === person)
  return (
    <span className="field">
      <label htmlFor="who">{words.screens.who.label}</label>
      <select id="who" value={known ? person : ''} onChange={event => setPerson(event.target.value)}>
        <option value="">{words.screens.who.nobody}</option>
        {here.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </span>
  )
}
