import { Choice, DateField, DecimalField, TextArea, TextField, Tick } from '../parts/field.tsx'
import { Section } from '../parts/page.tsx'
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

/** What was said of the cost, and when the clock may be ready. */
export function CostSection({ entry: { rest } }: { entry: TakeInEntry }) {
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
