import { useShop } from '../shop.tsx'

/** Who is at the counter: remembered here, written beside every act in the day book. */
export function Who() {
  const { people, words, person, actAs } = useShop()
  const here = people.filter(({ active }) => active)
  return (
    <span className="field">
      <label htmlFor="who">{words.screens.who.label}</label>
      <select id="who" value={person} onChange={event => actAs(event.target.value)}>
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
