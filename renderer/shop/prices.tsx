import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { BookHoursTable, keptHours, useHours } from './book-hours.tsx'
import { keptTiers, MarkupTable, useTiers } from './markup.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** The price book: the bench hour and hours of work, markup on parts, outside work, house calls and fees. */
export function Prices() {
  const { settings, words } = useShop()
  const { prices: said, groups, saved } = words.shop
  const { hours: _, markup: __, callOut: visit, ...rest } = settings.prices
  const entry = useEntry(rest, 'prices')
  const callOut = useEntry(visit, 'prices.callOut')
  const hours = useHours(settings.prices.hours)
  const tiers = useTiers(settings.prices.markup)
  const act = useChange(saved(groups.prices))
  const { currency } = settings.place
  const input = () => ({
    prices: {
      ...entry.value,
      callOut: { ...callOut.value },
      hours: keptHours(hours),
      markup: keptTiers(tiers),
    },
  })
  return (
    <SettingsForm intro={said.intro} label={groups.prices} act={act} input={input}>
      <div className="fields">
        <DecimalField
          label={said.benchRate}
          hint={said.benchRateHint}
          unit={currency}
          {...entry.at('benchRate')}
        />
        <DecimalField
          label={said.minimumCharge}
          hint={said.minimumChargeHint}
          unit={currency}
          {...entry.at('minimumCharge')}
        />
        <DecimalField label={said.rushPercent} unit="%" {...entry.at('rushPercent')} />
      </div>
      <h2>{said.hoursTitle}</h2>
      <p className="quiet">{said.hoursHint}</p>
      <BookHoursTable hours={hours} />
      <h2>{said.markupTitle}</h2>
      <p className="quiet">{said.markupHint}</p>
      <MarkupTable tiers={tiers} />
      <div className="fields">
        <DecimalField
          label={said.outsidePercent}
          hint={said.outsidePercentHint}
          unit="%"
          {...entry.at('outsidePercent')}
        />
      </div>
      <h2>{said.callOutTitle}</h2>
      <p className="quiet">{said.callOutHint}</p>
      <div className="fields">
        <DecimalField label={said.callOutFee} unit={currency} {...callOut.at('fee')} />
        <DecimalField label={said.freeDistance} {...callOut.at('freeDistance')} />
        <DecimalField label={said.perDistance} unit={currency} {...callOut.at('perDistance')} />
        <DecimalField label={said.eachFurtherClock} unit={currency} {...callOut.at('eachFurtherClock')} />
      </div>
      <h2>{said.feeTitle}</h2>
      <div className="fields">
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
