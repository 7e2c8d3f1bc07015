import { type CountryCode, parsePhoneNumberFromString } from 'libphonenumber-js/min'
import { bad, type Checked, good, problem } from '../problems.ts'

/** One way to reach an owner. */
export interface Contact {
  readonly kind: 'phone' | 'e-mail'
  readonly value: string
  readonly preferred: boolean
}

/** A contact as it is entered. */
export interface ContactEntry extends Contact {
  /** A phone that cannot be read as a number is kept as it is written. */
  readonly asWritten?: boolean | undefined
}

const mailbox = /^[^\s@]+@[^\s@]+\.[^\s@]+$/

/** What a phone as people write it is read as. */
export interface PhoneReading {
  /** What would be kept: E.164 (ITU-T E.164), or what was written where it cannot be put so (words or an extension beside the number); null for no phone number. */
  readonly kept: string | null
  /** The numbering plan gives such a number out, by its length and how it begins (libphonenumber's metadata). */
  readonly inPlan: boolean
}

/** Reads a phone, with the country's own prefix (ISO 3166-1 alpha-2) where none is written. */
export function phoneReading(text: string, country: string): PhoneReading {
  const written = text.trim()
  const options = { defaultCountry: country as CountryCode }
  const alone = parsePhoneNumberFromString(written, { ...options, extract: false })
  const phone = alone ?? parsePhoneNumberFromString(written, options)
  if (!phone?.isPossible()) return { kept: null, inPlan: false }
  const inPlan = phone.isValid()
  const nothingBeside = alone !== undefined && !alone.ext
  // Outside the plan a leading 0 may be the country's own prefix: it would be kept inside the number.
  const whole = nothingBeside && (inPlan || !phone.nationalNumber.startsWith('0'))
  return { kept: whole ? phone.number : written, inPlan }
}

/**
 * The contact as it is kept: a phone as it was read, or as it is written where that is asked for; an e-mail address in lower
 * case. Problems: `input.notAPhone`, `input.notAnEmail` on `field`.
 */
export function keptContact(entry: ContactEntry, country: string, field: string): Checked<Contact> {
  const { asWritten, ...contact } = entry
  const value = contact.value.trim()
  if (contact.kind === 'e-mail')
    return mailbox.test(value)
      ? good({ ...contact, value: value.toLowerCase() })
      : bad([problem('input.notAnEmail', `${field}.value`)])
  const kept = phoneReading(value, country).kept ?? (asWritten && value ? value : null)
  return kept === null
    ? bad([problem('input.notAPhone', `${field}.value`)])
    : good({ ...contact, value: kept })
}

/** The digits of a phone kept as E.164, with its country's prefix and as dialled within the country, so that it is found either way. */
export const phoneDigits = (kept: string): string[] =>
  [kept, parsePhoneNumberFromString(kept)?.formatNational() ?? ''].map(text => text.replace(/\D/g, ''))

/** A phone kept as E.164, spaced as people read it, with its country's prefix: `+44 1632 960218`. */
export const phoneText = (kept: string): string =>
  parsePhoneNumberFromString(kept)?.formatInternational() ?? kept

/** An e-mail, or a phone spaced as people read it. */
export const contactText = ({ kind, value }: Pick<Contact, 'kind' | 'value'>): string =>
  kind === 'phone' ? phoneText(value) : value

const fewestDigits = 3

/** The contact that what was typed may have meant: a phone with these digits in it, an e-mail that begins so. */
export function contactMeant<C extends Contact>(typed: string, contacts: readonly C[]): C | undefined {
  const text = typed.trim().toLowerCase()
  const digits = text.replace(/\D/g, '')
  return contacts.find(({ kind, value }) =>
    kind === 'phone'
      ? digits.length >= fewestDigits && phoneDigits(value).some(known => known.includes(digits))
      : text !== '' && value.startsWith(text),
  )
}
