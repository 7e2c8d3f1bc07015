import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** The bench hour and what an estimate costs. */
export function Prices() {
  const { settings, words } = useShop()
  const { prices: said, groups, saved } = words.shop
  const entry = useEntry(settings.prices, 'prices')
  const act = useChange(saved(groups.prices))
  const { currency } = settings.place
  return (
    <SettingsForm
      intro={said.intro}
      label={groups.prices}
      act={act}
      input={() => ({ prices: { ...entry.value } })}
    >
      <div className="fields">
        <DecimalField
          label={said.benchRate}
          hint={said.benchRateHint}
          unit={currency}
          {...entry.at('benchRate')}
        />
        <DecimalField
          label={said.estimateFee}
          hint={said.estimateFeeHint}
          unit={currency}
          {...entry.at('estimateFee')}
        />
      </div>
    </SettingsForm>
  )
}
