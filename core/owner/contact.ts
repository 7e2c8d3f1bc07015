import { type CountryCode, parsePhoneNumberFromString } from 'libphonenumber-js/min'
import { bad, type Checked, good, problem } from '../problems.ts'

/** One way to reach an owner. */
export interface Contact {
  readonly kind: 'phone' | 'e-mail'
  readonly value: string
  readonly preferred: boolean
}

const mailbox = /^[^\s@]+@[^\s@]+\.[^\s@]+$/

/**
 * The contact as it is kept: a phone as E.164 (ITU-T E.164), read with the country's own prefix where none is written; an e-mail
 * address in lower case. Problems: `input.notAPhone`, `input.notAnEmail` on `field`.
 */
export function keptContact(contact: Contact, country: string, field: string): Checked<Contact> {
  const value = contact.value.trim()
  if (contact.kind === 'e-mail')
    return mailbox.test(value)
      ? good({ ...contact, value: value.toLowerCase() })
      : bad([problem('input.notAnEmail', `${field}.value`)])
  const phone = parsePhoneNumberFromString(value, country as CountryCode)
  return phone?.isPossible()
    ? good({ ...contact, value: phone.number })
    : bad([problem('input.notAPhone', `${field}.value`)])
}

/** The digits of a phone kept as E.164, with its country's prefix and as dialled within the country, so that it is found either way. */
export const phoneDigits = (kept: string): string[] =>
  [kept, parsePhoneNumberFromString(kept)?.formatNational() ?? ''].map(text => text.replace(/\D/g, ''))

/** A phone kept as E.164, spaced as people read it, with its country's prefix: `+44 1632 960218`. */
export const phoneText = (kept: string): string =>
  parsePhoneNumberFromString(kept)?.formatInternational() ?? kept
