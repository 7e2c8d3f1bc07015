import { useQuery } from '@tanstack/react-query'
import { answer, api } from '../api.ts'
import { Choice, DateField, DecimalField, TextArea, TextField, Tick } from '../parts/field.tsx'
import { Section } from '../parts/page.tsx'
import { Reckoned } from '../repair/reckoned-date.tsx'
import { useShop } from '../shop.tsx'
import type { TakeInEntry } from './take-in-entry.ts'

/** The fault in the owner's words, and what work is asked for. */
export function FaultSection({ entry: { rest } }: { entry: TakeInEntry }) {
  const { words } = useShop()
  const { takeIn } = words.counter
  return (
    <Section title={takeIn.fault}>
      <div className="form">
        <TextArea label={takeIn.faultAsTold} {...rest.at('fault')} />
        <Choice label={takeIn.scope} choices={words.scopes} {...rest.at('scope')} />
      </div>
    </Section>
  )
}

/** The date reckoned for the clock and the work as told so far. */
function useReckoned({ knownClock, clock, rest }: TakeInEntry) {
  const { form, trains, power, duration } = clock.value
  const { scope, covered } = rest.value
  const query = {
    scope,
    covered: covered ? ('yes' as const) : ('no' as const),
    ...(knownClock
      ? { clock: String(knownClock.id), form: knownClock.form }
      : { form, ...(trains ? { trains } : {}), power, duration }),
  }
  const { data } = useQuery({
    queryKey: ['date', query],
    queryFn: () => answer(api.pages.date.$get({ query })),
    placeholderData: before => before,
  })
  return data?.suggested
}

/** What was said of the cost, and when the clock may be ready. */
export function CostSection({ entry }: { entry: TakeInEntry }) {
  const { rest } = entry
  const { words, settings } = useShop()
  const { takeIn } = words.counter
  const { currency } = settings.place
  return (
    <Section title={takeIn.cost}>
      <div className="form">
        <div className="fields">
          <DecimalField label={takeIn.fee} unit={currency} {...rest.at('fee')} />
          <DecimalField label={takeIn.low} unit={currency} {...rest.at('low')} />
          <DecimalField label={takeIn.high} unit={currency} {...rest.at('high')} />
        </div>
        <div className="fields">
          <TextField label={takeIn.agreedWords} {...rest.at('agreedWords')} />
          <DateField label={takeIn.estimatedOn} hint={takeIn.estimatedHint} {...rest.at('estimatedOn')} />
        </div>
        <Reckoned
          label={takeIn.reckoned}
          suggested={useReckoned(entry)}
          take={estimatedOn => rest.set({ estimatedOn })}
        />
        <Tick label={takeIn.estimateOnly} {...rest.at('estimateOnly')} />
      </div>
    </Section>
  )
}

/** Who leaves the clock and signs for it. */
export function SignatureSection({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  const signed = entry.rest.at('signedInBy')
  return (
    <Section title={takeIn.signature}>
      <div className="form">
        <TextField
          label={takeIn.signedBy}
          hint={takeIn.signedHint}
          {...signed}
          value={signed.value || entry.owner.value.name}
        />
      </div>
    </Section>
  )
}
