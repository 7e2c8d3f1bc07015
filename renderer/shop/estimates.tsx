import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** How long an estimate holds, and how far a bill may pass what was agreed. */
export function Estimates() {
  const { settings, words } = useShop()
  const { estimates: said, groups, saved } = words.shop
  const { validDays, ...overrun } = settings.estimate
  const entry = useEntry({ ...overrun, validDays: String(validDays) }, 'estimate')
  const act = useChange(saved(groups.estimates))
  const input = () => ({ estimate: { ...entry.value, validDays: Number(entry.value.validDays) } })
  return (
    <SettingsForm intro={said.intro} label={groups.estimates} act={act} input={input}>
      <div className="fields">
        <DecimalField label={said.validDays} unit={said.days} {...entry.at('validDays')} />
      </div>
      <h2>{said.overrun}</h2>
      <p className="quiet">{said.overrunHint}</p>
      <div className="fields">
        <DecimalField label={said.overrunPercent} unit="%" {...entry.at('overrunPercent')} />
        <DecimalField
          label={said.overrunAmount}
          unit={settings.place.currency}
          {...entry.at('overrunAmount')}
        />
      </div>
    </SettingsForm>
  )
}
