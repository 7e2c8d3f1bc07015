import { currencies } from '../../core/money/currency.ts'
import { minor } from '../../core/money/minor.ts'
import { type FormatSettings, formats } from '../../core/words/format.ts'
import { useEntry } from '../parts/entry.ts'
import { Choice, DecimalField, FewChoice } from '../parts/field.tsx'
import { locales, named, zones } from '../shell/place.ts'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** A date and an amount as they would be written, or nothing while what is typed is no way of writing. */
function useSample(place: FormatSettings): string {
  const { today, words } = useShop()
  const said = words.shop.place
  try {
    const { longDate, money } = formats(place)
    return said.shown(longDate(today), money(minor(123456)))
  } catch {
    return said.notShown
  }
}

/** Where the shop is, its money, and how dates and figures are written. */
export function Place() {
  const { settings, words } = useShop()
  const { place: said, groups, saved } = words.shop
  const entry = useEntry(settings.place, 'place')
  const { locale, timeZone, currency } = entry.value
  const cash = useEntry(settings.cash, 'cash')
  const act = useChange(saved(groups.place))
  const sample = useSample(entry.value)
  return (
    <SettingsForm
      intro={said.intro}
      label={groups.place}
      act={act}
      input={() => ({ place: { ...entry.value }, cash: { ...cash.value } })}
    >
      <Choice
        label={said.country}
        hint={said.countryHint}
        choices={named('region', locale)}
        {...entry.at('country')}
      />
      <div className="fields">
        <Choice label={said.timeZone} choices={zones(timeZone)} {...entry.at('timeZone')} />
        <Choice
          label={said.locale}
          hint={sample}
          choices={locales(entry.value.country, locale)}
          {...entry.at('locale')}
        />
      </div>
      <Choice
        label={said.currency}
        hint={said.currencyHint}
        choices={named('currency', locale, currencies)}
        {...entry.at('currency')}
      />
      <DecimalField label={said.cashStep} hint={said.cashStepHint} unit={currency} {...cash.at('step')} />
      <div className="fields">
        <FewChoice label={said.paper} choices={said.papers} {...entry.at('paper')} />
        <FewChoice label={said.units} choices={said.unitsOf} {...entry.at('units')} />
      </div>
    </SettingsForm>
  )
}
