import { useState } from 'react'
import { isDialled } from '../../core/owner/dialled.ts'
import { answer, api } from '../api.ts'
import { ActButton, ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { FewChoice, TextField, Tick } from '../parts/field.tsx'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import type { Owner, OwnerProps } from './owner.ts'
import { PhoneField } from './phone-field.tsx'

type Contact = Owner['owner']['contacts'][number]

/** Every way to reach an owner, the preferred one first; those struck out stay legible below. */
export function Contacts({ view: { owner, struckContacts } }: { view: Owner }) {
  const { register, screens } = useShop().words
  const preferredId = owner.contacts.find(contact => contact.preferred)?.id ?? null
  return (
    <>
      <ul className="contact-list">
        {owner.contacts.map(contact => (
          <ContactLine key={contact.id} contact={contact} preferredId={preferredId} />
        ))}
      </ul>
      {owner.contacts.length === 0 && <p className="quiet">{register.owner.noContacts}</p>}
      {struckContacts.length > 0 && (
        <ul className="contact-list">
          {struckContacts.map(({ id, shown, struckReason }) => (
            <li key={id}>
              <s className="struck">{shown}</s>{' '}
              <small className="quiet">{screens.struck(struckReason ?? '')}</small>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

interface LineProps {
  readonly contact: Contact
  readonly preferredId: number | null
}

function ContactLine({ contact, preferredId }: LineProps) {
  const { register } = useShop().words
  const { kind, value, preferred } = contact
  const [striking, setStriking] = useState(false)
  return (
    <li>
      <div className="contact">
        <Reach contact={contact} />
        <span className="quiet">
          {register.contactForm.kinds[kind]}
          {preferred && `, ${register.owner.preferred}`}
        </span>
        {!preferred && !striking && <Prefer contact={contact} preferredId={preferredId} />}
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

/** A contact as a link to call or write by; a phone kept as it is written is not one that can be dialled. */
function Reach({ contact: { kind, value, shown } }: { contact: Contact }) {
  if (kind === 'phone' && !isDialled(value)) return <span>{shown}</span>
  return <a href={`${kind === 'phone' ? 'tel' : 'mailto'}:${value}`}>{shown}</a>
}

function Prefer({ contact: { id, shown }, preferredId }: LineProps) {
  const { owner } = useShop().words.register
  const act = useAct(
    (contactId: number) =>
      answer(api.register.preferContact.$post({ json: { contactId, seen: { preferredId } } })),
    {
      said: () => owner.nowPreferred(shown),
    },
  )
  return (
    <ActButton act={act} input={id} look="plain" label={owner.preferOf(shown)}>
      {owner.prefer}
    </ActButton>
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
    { kind: 'phone' as Contact['kind'], value: '', preferred: owner.contacts.length === 0, asWritten: false },
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
      {kind === 'phone' ? (
        <PhoneField
          label={contactForm.value.phone}
          hint={contactForm.phoneHint}
          {...entry.at('value')}
          asWritten={entry.at('asWritten')}
        />
      ) : (
        <TextField label={contactForm.value['e-mail']} inputMode="email" {...entry.at('value')} />
      )}
      <Tick label={contactForm.preferred} {...entry.at('preferred')} />
    </ActPanel>
  )
}
