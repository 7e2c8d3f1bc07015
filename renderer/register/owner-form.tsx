import { useState } from 'react'
import { useLocation, useSearchParams } from 'wouter'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextArea, TextField } from '../parts/field.tsx'
import { Page, Section } from '../parts/page.tsx'
import { useSeen } from '../parts/seen.ts'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import { LikelyOwners } from './likely-owners.tsx'
import type { OwnerProps } from './owner.ts'
import { PhoneField } from './phone-field.tsx'
import { contactPlaces, noContacts, typedContacts } from './typed-contacts.ts'

type OwnerInput = Parameters<typeof api.register.addOwner.$post>[0]['json']

/** A page to enter an owner who has not brought a clock yet. */
export function NewOwner() {
  const { register } = useShop().words
  const { ownerForm } = register
  const [asked] = useSearchParams()
  const [, navigate] = useLocation()
  const entry = useEntry({ name: asked.get('name') ?? '', address: '', country: '', notes: '' })
  const ways = useEntry(noContacts)
  const [otherThan, setOtherThan] = useState<readonly number[]>([])
  const act = useAct((json: OwnerInput) => answer(api.register.addOwner.$post({ json })), {
    said: (_, { name }) => ownerForm.entered(name),
    after: ({ id }) => navigate(`/register/owner/${id}`),
  })
  const { email } = contactPlaces(ways.value)
  return (
    <Page title={ownerForm.newTitle}>
      <Section title={register.name}>
        <ActForm
          act={act}
          input={() => ({ ...entry.value, contacts: typedContacts(ways.value), otherThan: [...otherThan] })}
          label={ownerForm.newTitle}
          focusFirst
        >
          <TextField label={ownerForm.name} {...entry.at('name')} />
          <div className="fields">
            <PhoneField
              label={ownerForm.phone}
              {...ways.at('phone')}
              name="contacts[0].value"
              asWritten={ways.at('phoneAsWritten')}
            />
            <TextField
              label={ownerForm.email}
              inputMode="email"
              {...ways.at('email')}
              name={`contacts[${email}].value`}
            />
          </div>
          <LikelyOwners
            typed={{ ...entry.value, ...ways.value }}
            otherThan={otherThan}
            onOtherThan={setOtherThan}
            onSame={({ id }) => navigate(`/register/owner/${id}`)}
          />
          <TextArea label={ownerForm.address} {...entry.at('address')} />
          <TextArea label={ownerForm.notes} hint={ownerForm.notesHint} {...entry.at('notes')} />
          <div className="buttons">
            <Send act={act}>{ownerForm.enter}</Send>
          </div>
        </ActForm>
      </Section>
    </Page>
  )
}

/** Changes what is on record of an owner, contacts apart. */
export function ChangeOwner({ view: { owner }, close }: OwnerProps) {
  const { ownerForm } = useShop().words.register
  const { name, address, country, notes } = owner
  const now = { name, address, country, notes }
  const entry = useEntry(now)
  const act = useAct(
    (json: Parameters<typeof api.register.changeOwner.$post>[0]['json']) =>
      answer(api.register.changeOwner.$post({ json })),
    { said: (_, input) => ownerForm.changed(input.name), after: close },
  )
  const seen = useSeen(entry, now, act.problems)
  return (
    <ActPanel
      title={ownerForm.changeTitle}
      act={act}
      input={() => ({ ownerId: owner.id, ...entry.value, seen })}
      send={ownerForm.change}
      close={close}
    >
      <TextField label={ownerForm.name} {...entry.at('name')} />
      <TextArea label={ownerForm.address} {...entry.at('address')} />
      <TextField
        label={ownerForm.country}
        hint={ownerForm.countryHint}
        maxLength={2}
        {...entry.at('country')}
      />
      <TextArea label={ownerForm.notes} hint={ownerForm.notesHint} {...entry.at('notes')} />
    </ActPanel>
  )
}
