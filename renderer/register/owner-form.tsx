import { useState } from 'react'
import { useLocation, useSearchParams } from 'wouter'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextArea, TextField } from '../parts/field.tsx'
import { Page, Section } from '../parts/page.tsx'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import { LikelyOwners } from './likely-owners.tsx'
import type { OwnerProps } from './owner.ts'

type OwnerInput = Parameters<typeof api.register.addOwner.$post>[0]['json']

/** The contacts of a new owner: what was typed, the first of them preferred. */
function contactsOf({ phone, email }: { phone: string; email: string }) {
  const typed = [
    { kind: 'phone' as const, value: phone.trim() },
    { kind: 'e-mail' as const, value: email.trim() },
  ].filter(({ value }) => value !== '')
  return typed.map((contact, index) => ({ ...contact, preferred: index === 0 }))
}

/** A page to enter an owner who has not brought a clock yet. */
export function NewOwner() {
  const { register } = useShop().words
  const { ownerForm } = register
  const [asked] = useSearchParams()
  const [, navigate] = useLocation()
  const entry = useEntry({ name: asked.get('name') ?? '', address: '', country: '', notes: '' })
  // The request numbers its contacts; the first that was typed is `contacts[0]`.
  const ways = useEntry({ phone: '', email: '' })
  const [otherThan, setOtherThan] = useState<readonly number[]>([])
  const act = useAct((json: OwnerInput) => answer(api.register.addOwner.$post({ json })), {
    said: (_, { name }) => ownerForm.entered(name),
    after: ({ id }) => navigate(`/register/owner/${id}`),
  })
  const emailName = ways.value.phone.trim() ? 'contacts[1].value' : 'contacts[0].value'
  return (
    <Page title={ownerForm.newTitle}>
      <Section title={register.name}>
        <ActForm
          act={act}
          input={() => ({ ...entry.value, contacts: contactsOf(ways.value), otherThan: [...otherThan] })}
          label={ownerForm.newTitle}
          focusFirst
        >
          <TextField label={ownerForm.name} {...entry.at('name')} />
          <div className="fields">
            <TextField
              label={ownerForm.phone}
              inputMode="tel"
              {...ways.at('phone')}
              name="contacts[0].value"
            />
            <TextField label={ownerForm.email} inputMode="email" {...ways.at('email')} name={emailName} />
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
  const entry = useEntry({ name, address, country, notes })
  const act = useAct(
    (json: Parameters<typeof api.register.changeOwner.$post>[0]['json']) =>
      answer(api.register.changeOwner.$post({ json })),
    { said: (_, input) => ownerForm.changed(input.name), after: close },
  )
  return (
    <ActPanel
      title={ownerForm.changeTitle}
      act={act}
      input={() => ({ ownerId: owner.id, ...entry.value })}
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
