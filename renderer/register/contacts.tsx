import { useState } from 'react'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { FewChoice, TextField, Tick } from '../parts/field.tsx'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import type { Owner, OwnerProps } from './owner.ts'

type Contact = Owner['owner']['contacts'][number]

/** Every way to reach an owner, the preferred one first; those struck out stay legible below. */
export function Contacts({ view: { owner, struckContacts } }: { view: Owner }) {
  const { register, screens } = useShop().words
  return (
    <>
      <ul className="contact-list">
        {owner.contacts.map(contact => (
          <ContactLine key={contact.id} contact={contact} />
        ))}
      </ul>
      {owner.contacts.length === 0 && <p className="quiet">{register.owner.noContacts}</p>}
      {struckContacts.length > 0 && (
        <ul className="contact-list">
          {struckContacts.map(({ id, value, struckReason }) => (
            <li key={id}>
              <s className="struck">{value}</s>{' '}
              <small className="quiet">{screens.struck(struckReason ?? '')}</small>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

function ContactLine({ contact }: { contact: Contact }) {
  const { register } = useShop().words
  const { kind, value, shown, preferred } = contact
  const [striking, setStriking] = useState(false)
  return (
    <li>
      <div className="contact">
        <a href={`${kind === 'phone' ? 'tel' : 'mailto'}:${value}`}>{shown}</a>
        <span className="quiet">
          {register.contactForm.kinds[kind]}
          {preferred && `, ${register.owner.preferred}`}
        </span>
        {!striking && (
          <button
            type="button"
            className="plain"
            aria-label={register.strikeContact.of(value)}
            onClick={() => setStriking(true)}
          >
            {register.strikeContact.act}
          </button>
        )}
      </div>
      {striking && <Strike contact={contact} close={() => setStriking(false)} />}
    </li>
  )
}

function Strike({ contact, close }: { contact: Contact; close: () => void }) {
  const { register, screens } = useShop().words
  const { strikeContact } = register
  const entry = useEntry({ reason: '' })
  const act = useAct(
    (json: { contactId: number; reason: string }) => answer(api.register.strikeContact.$post({ json })),
    { said: () => strikeContact.said(contact.value) },
  )
  return (
    <ActForm
      act={act}
      input={() => ({ contactId: contact.id, ...entry.value })}
      label={strikeContact.of(contact.value)}
      focusFirst
    >
      <TextField label={strikeContact.reason} {...entry.at('reason')} />
      <div className="buttons">
        <Send act={act}>{strikeContact.send}</Send>
        <button type="button" className="second" onClick={close}>
          {screens.form.no}
        </button>
      </div>
    </ActForm>
  )
}

/** Adds a telephone number or an e-mail address. */
export function AddContact({ view: { owner }, close }: OwnerProps) {
  const { contactForm } = useShop().words.register
  const entry = useEntry(
    { kind: 'phone' as Contact['kind'], value: '', preferred: owner.contacts.length === 0 },
    'contact',
  )
  const { kind } = entry.value
  const act = useAct(
    (json: Parameters<typeof api.register.addContact.$post>[0]['json']) =>
      answer(api.register.addContact.$post({ json })),
    { said: () => contactForm.said, after: close },
  )
  return (
    <ActPanel
      title={contactForm.title}
      act={act}
      input={() => ({ ownerId: owner.id, contact: entry.value })}
      send={contactForm.send}
      close={close}
    >
      <FewChoice label={contactForm.kind} choices={contactForm.kinds} {...entry.at('kind')} />
      <TextField
        label={contactForm.value[kind]}
        hint={kind === 'phone' ? contactForm.phoneHint : undefined}
        inputMode={kind === 'phone' ? 'tel' : 'email'}
        {...entry.at('value')}
      />
      <Tick label={contactForm.preferred} {...entry.at('preferred')} />
    </ActPanel>
  )
}
