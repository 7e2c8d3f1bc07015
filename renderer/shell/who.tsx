import { useShop } from '../shop.tsx'

/** Who is at the counter: remembered by this window, written beside every act in the day book. */
export function Who() {
  const { people, words, person, actAs } = useShop()
  const { who } = words.screens
  const here = people.filter(({ active }) => active)
  return (
    <span className="field">
      <label htmlFor="who">{who.label}</label>
      <select id="who" value={person} onChange={event => actAs(event.target.value)}>
        {person === '' && <option value="">{here.length === 0 ? who.nobody : who.choose}</option>}
        {here.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </span>
  )
}
