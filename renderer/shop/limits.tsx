import { type Going, goings, type LimitsSetting } from '../../core/run-in/limits.ts'
import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

type Key = `${Going}.${keyof LimitsSetting}`

/** The limits as a flat form, by the paths of the request's problems. */
const typed = (limits: Readonly<Record<Going, LimitsSetting>>) =>
  Object.fromEntries(
    goings.flatMap(going => [
      [`${going}.perDay`, limits[going].perDay],
      [`${going}.steady`, limits[going].steady],
    ]),
  ) as Record<Key, string>

const kept = (entry: Record<Key, string>) =>
  Object.fromEntries(
    goings.map(going => [going, { perDay: entry[`${going}.perDay`], steady: entry[`${going}.steady`] }]),
  ) as Record<Going, LimitsSetting>

/** How near and how steady each kind of clock has to go, each with the reason of what to begin with. */
export function Limits() {
  const { settings, words } = useShop()
  const { limits: said, groups, saved } = words.shop
  const entry = useEntry(typed(settings.limits), 'limits')
  const act = useChange(saved(groups.limits))
  return (
    <SettingsForm
      intro={said.intro}
      label={groups.limits}
      act={act}
      input={() => ({ limits: kept(entry.value) })}
    >
      <ul className="limits">
        <li aria-hidden="true" className="heads">
          <span />
          <span>{said.perDay}</span>
          <span>{said.steady}</span>
        </li>
        {goings.map(going => (
          <li key={going}>
            <p>
              <b>{said.goings[going]}</b>
              <small>{said.reasons[going]}</small>
            </p>
            <DecimalField
              label={said.of(said.perDay, said.goings[going])}
              hideLabel
              unit={said.perDayUnit}
              {...entry.at(`${going}.perDay`)}
            />
            <DecimalField
              label={said.of(said.steady, said.goings[going])}
              hideLabel
              unit={said.steadyUnit}
              {...entry.at(`${going}.steady`)}
            />
          </li>
        ))}
      </ul>
    </SettingsForm>
  )
}
