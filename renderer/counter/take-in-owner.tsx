import { Combobox } from '../parts/combobox.tsx'
import { Field, TextArea, TextField } from '../parts/field.tsx'
import { Section } from '../parts/page.tsx'
import { LikelyOwners } from '../register/likely-owners.tsx'
import { PhoneField } from '../register/phone-field.tsx'
import { contactPlaces } from '../register/typed-contacts.ts'
import { useFound } from '../shell/find-box.tsx'
import { ownerDetail } from '../shell/found.ts'
import { useShop } from '../shop.tsx'
import type { TakeInEntry } from './take-in-entry.ts'

/** Whose clock it is: found while typing, or new. */
export function OwnerSection({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  return (
    <Section title={takeIn.owner} note={entry.known ? takeIn.known : undefined}>
      {entry.known ? <Known entry={entry} /> : <Fresh entry={entry} />}
    </Section>
  )
}

function Known({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  return (
    <p>
      <b>{entry.known?.name}</b>{' '}
      <button type="button" className="plain" onClick={() => entry.chooseOwner(null)}>
        {takeIn.changeOwner}
      </button>
    </p>
  )
}

function Fresh({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  const { owner } = entry
  const { phone, email } = contactPlaces(owner.value)
  return (
    <div className="form">
      <OwnerBox entry={entry} />
      <div className="fields">
        <PhoneField
          label={takeIn.phone}
          {...owner.at('phone')}
          {...(phone === null ? {} : { name: `owner.contacts[${phone}].value` })}
          asWritten={owner.at('phoneAsWritten')}
        />
        <TextField
          label={takeIn.email}
          inputMode="email"
          {...owner.at('email')}
          name={`owner.contacts[${email}].value`}
        />
        <TextArea label={takeIn.address} {...owner.at('address')} />
      </div>
      <LikelyOwners
        typed={owner.value}
        otherThan={entry.otherOwners}
        onOtherThan={entry.setOtherOwners}
        onSame={({ id, name }) => entry.chooseOwner({ id, name })}
      />
    </div>
  )
}

/** The owner's name; those on record are offered while typing, and choosing one goes on to the owner's clocks. */
function OwnerBox({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  const { name, value, onChange } = entry.owner.at('name')
  const { results, settled } = useFound(value, 'owner')
  return (
    <Field name={name} label={takeIn.ownerName} hint={takeIn.ownerHint}>
      {control => (
        <Combobox
          control={control}
          label={takeIn.ownersFound}
          text={value}
          onText={onChange}
          items={results}
          settled={settled}
          itemKey={found => String(found.id)}
          show={found => (
            <>
              <b>{found.name}</b> <small>{ownerDetail(found)}</small>
            </>
          )}
          onChoose={found => entry.chooseOwner({ id: found.id, name: found.name ?? '' })}
          startsOpen
        />
      )}
    </Field>
  )
}
