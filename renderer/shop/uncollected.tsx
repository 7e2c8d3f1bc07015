import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** When a clock that nobody collects is marked as such; what may be done with it is a matter of local law. */
export function Uncollected() {
  const { settings, words } = useShop()
  const { uncollected: said, groups, saved } = words.shop
  const entry = useEntry({ uncollectedDays: String(settings.collection.uncollectedDays) }, 'collection')
  const act = useChange(saved(groups.uncollected))
  const input = () => ({ collection: { uncollectedDays: Number(entry.value.uncollectedDays) } })
  return (
    <SettingsForm intro={said.intro} label={groups.uncollected} act={act} input={input}>
      <aside className="note">
        <p>
          <b>{said.law}</b>
        </p>
        <p>{said.lawAdvice}</p>
      </aside>
      <div className="fields">
        <DecimalField label={said.days} {...entry.at('uncollectedDays')} />
      </div>
    </SettingsForm>
  )
}
