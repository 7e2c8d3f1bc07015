import { Combobox } from '../parts/combobox.tsx'
import { Field, TextArea, TextField } from '../parts/field.tsx'
import { Section } from '../parts/page.tsx'
import { LikelyOwners } from '../register/likely-owners.tsx'
import { useFound } from '../shell/find-box.tsx'
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

/** The name a contact has in the request, so that its problem finds its field: an empty telephone is left out before it. */
const contactName = (place: number) => `owner.contacts[${place}].value`

function Fresh({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  const phone = entry.owner.at('phone')
  const email = entry.owner.at('email')
  const emailPlace = phone.value.trim() === '' ? 0 : 1
  return (
    <div className="form">
      <OwnerBox entry={entry} />
      <div className="fields">
        <TextField
          label={takeIn.phone}
          inputMode="tel"
          {...phone}
          name={emailPlace === 1 ? contactName(0) : phone.name}
        />
        <TextField label={takeIn.email} inputMode="email" {...email} name={contactName(emailPlace)} />
        <TextArea label={takeIn.address} {...entry.owner.at('address')} />
      </div>
      <LikelyOwners
        typed={entry.owner.value}
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
              <b>{found.name}</b>
              <small>{(found.address ?? '').replaceAll('\n', ', ')}</small>
            </>
          )}
          onChoose={found => entry.chooseOwner({ id: found.id, name: found.name ?? '' })}
          startsOpen
        />
      )}
    </Field>
  )
}
