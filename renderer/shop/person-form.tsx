import { initialsOf } from '../../core/people/initials.ts'
import { roles as allRoles, type Role } from '../../core/people/roles.ts'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { type EntryState, useEntry } from '../parts/entry.ts'
import { DecimalField, TextField, Tick } from '../parts/field.tsx'
import { useProblem } from '../parts/problems.tsx'
import { type Shop, useShop } from '../shop.tsx'

export type Person = Shop['people'][number]

type About = Pick<Person, 'initials' | 'benchHours'> & { readonly roles: readonly Role[] }

/** Whoever is entered works at the bench, until something else is ticked. */
const somebodyNew = { name: '', initials: '', benchHours: '', roles: ['bench'] as readonly Role[] }

/** What somebody is in the shop, one tick a role. */
function RoleTicks({ value, onChange }: { value: readonly Role[]; onChange: (roles: Role[]) => void }) {
  const { roles, shop } = useShop().words
  const problem = useProblem('roles')
  const ticked = (role: Role) => value.includes(role)
  return (
    <fieldset className="field wide">
      <legend>{shop.people.roles}</legend>
      {allRoles.map(role => (
        <Tick
          key={role}
          name={`roles.${role}`}
          label={`${roles[role]}: ${shop.people.rolesMay[role]}`}
          value={ticked(role)}
          onChange={on => onChange(allRoles.filter(one => (one === role ? on : ticked(one))))}
        />
      ))}
      {problem && <span className="problem">{problem.message}</span>}
    </fieldset>
  )
}

/** What is said of a person besides the name. */
function AboutFields({ entry, name }: { entry: EntryState<About>; name: string }) {
  const { people: said } = useShop().words.shop
  return (
    <>
      <RoleTicks value={entry.value.roles} onChange={roles => entry.set({ roles })} />
      <div className="fields">
        <TextField
          label={said.initials}
          hint={said.initialsHint(initialsOf(name))}
          maxLength={4}
          {...entry.at('initials')}
        />
        <DecimalField
          label={said.benchHours}
          hint={said.benchHoursHint}
          unit={said.hours}
          {...entry.at('benchHours')}
        />
      </div>
    </>
  )
}

/** The fields of somebody new. */
export function AddPerson() {
  const { people: said } = useShop().words.shop
  const entry = useEntry(somebodyNew)
  const act = useAct(
    (json: typeof somebodyNew) =>
      answer(api.shop.addPerson.$post({ json: { ...json, roles: [...json.roles] } })),
    { said: (_, { name }) => said.added(name), after: entry.reset },
  )
  return (
    <>
      <h2>{said.addTitle}</h2>
      <ActForm act={act} input={() => entry.value} label={said.addTitle}>
        <TextField label={said.name} {...entry.at('name')} />
        <AboutFields entry={entry} name={entry.value.name} />
        <Send act={act} look="second">
          {said.add}
        </Send>
      </ActForm>
    </>
  )
}

/** The roles, initials and hours of somebody who is entered already. */
export function ChangePerson({ person, onClose }: { person: Person; onClose: () => void }) {
  const { shop, screens } = useShop().words
  const { id: personId, name, roles, initials, benchHours } = person
  const entry = useEntry<About>({ roles, initials, benchHours })
  const seen = { roles: roles.join(' '), initials, benchHours }
  const act = useAct(
    (about: About) =>
      answer(api.shop.changePerson.$post({ json: { personId, ...about, roles: [...about.roles], seen } })),
    { said: () => shop.people.changed(name), after: onClose },
  )
  return (
    <>
      <h2>{name}</h2>
      <ActForm act={act} input={() => entry.value} label={name} focusFirst>
        <AboutFields entry={entry} name={name} />
        <div className="buttons">
          <Send act={act}>{shop.people.save}</Send>
          <button type="button" className="plain" onClick={onClose}>
            {screens.form.no}
          </button>
        </div>
      </ActForm>
    </>
  )
}
