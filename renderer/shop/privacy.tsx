import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** How long papers are kept of an owner whose personal data were taken out. */
export function Privacy() {
  const { settings, words } = useShop()
  const { privacy: said, groups, saved } = words.shop
  const entry = useEntry({ keepPapersYears: String(settings.privacy.keepPapersYears) }, 'privacy')
  const act = useChange(saved(groups.privacy))
  const input = () => ({ privacy: { keepPapersYears: Number(entry.value.keepPapersYears) } })
  return (
    <SettingsForm intro={said.intro} label={groups.privacy} act={act} input={input}>
      <aside className="note">
        <p>{said.law}</p>
      </aside>
      <div className="fields">
        <DecimalField label={said.years} {...entry.at('keepPapersYears')} />
      </div>
    </SettingsForm>
  )
}
