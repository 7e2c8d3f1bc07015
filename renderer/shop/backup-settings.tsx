import { useEntry } from '../parts/entry.ts'
import { DecimalField, TextField, Tick } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** Whether copies are made without being asked, where they go, and how long they are kept. */
export function BackupSettings() {
  const { settings, words } = useShop()
  const { backups: said, save } = words.shop
  const { keep, lateDays, ...rest } = settings.backups
  const entry = useEntry({ ...rest, lateDays: String(lateDays) }, 'backups')
  const spans = useEntry(
    {
      days: String(keep.days),
      weeks: String(keep.weeks),
      months: String(keep.months),
      years: keep.years === null ? '' : String(keep.years),
    },
    'backups.keep',
  )
  const act = useChange(said.changed)
  const input = () => {
    const { days, weeks, months, years } = spans.value
    return {
      backups: {
        ...entry.value,
        lateDays: Number(entry.value.lateDays),
        keep: {
          days: Number(days),
          weeks: Number(weeks),
          months: Number(months),
          years: years.trim() === '' ? null : Number(years),
        },
      },
    }
  }
  return (
    <SettingsForm label={said.settings} act={act} input={input} save={save}>
      <Tick label={said.automatic} hint={said.automaticHint} {...entry.at('automatic')} />
      <TextField label={said.into} hint={said.intoHint} {...entry.at('folder')} />
      <fieldset>
        <legend>{said.keep}</legend>
        <div className="fields">
          <DecimalField label={said.days} {...spans.at('days')} />
          <DecimalField label={said.weeks} {...spans.at('weeks')} />
          <DecimalField label={said.months} {...spans.at('months')} />
          <DecimalField label={said.years} hint={said.yearsHint} {...spans.at('years')} />
        </div>
        <p className="quiet">{said.wholeDays}</p>
      </fieldset>
      <div className="fields">
        <DecimalField label={said.late} {...entry.at('lateDays')} />
      </div>
    </SettingsForm>
  )
}
