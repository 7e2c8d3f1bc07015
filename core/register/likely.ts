import type { Contact } from '../owner/contact.ts'

/** An owner as far as telling one from another goes; contacts as they are kept. */
export interface OwnerSeen {
  readonly name: string
  readonly contacts: readonly Pick<Contact, 'value'>[]
}

/** A clock as far as telling one from another goes. */
export interface ClockSeen {
  readonly maker: string
  readonly serial: string
}

/** The words of a text as anybody might type them: without accents, capitals and signs. */
export const plainWords = (text: string): string[] =>
  text
    .normalize('NFKD')
    .replace(/[\p{M}'’]/gu, '')
    .toLowerCase()
    .match(/[\p{L}\p{N}]+/gu) ?? []

/** The same words in any order, or the same letters with other spaces between them. */
function sameWords(one: string, other: string): boolean {
  const [a, b] = [plainWords(one), plainWords(other)]
  return a.join('') === b.join('') || a.toSorted().join(' ') === b.toSorted().join(' ')
}

/** Why a new owner may be one on record: a contact in common, or the same name however it is written; null when neither. */
export function whyLikelyOwner(typed: OwnerSeen, onRecord: OwnerSeen): 'contact' | 'name' | null {
  const values = new Set(onRecord.contacts.map(({ value }) => value))
  if (typed.contacts.some(({ value }) => values.has(value))) return 'contact'
  return sameWords(typed.name, onRecord.name) ? 'name' : null
}

/** Whether a new clock may be one on record: the same serial, and the same maker or none told of one of them. */
export function isLikelyClock(typed: ClockSeen, onRecord: ClockSeen): boolean {
  const serial = plainWords(typed.serial).join('')
  if (serial === '' || serial !== plainWords(onRecord.serial).join('')) return false
  return typed.maker === '' || onRecord.maker === '' || sameWords(typed.maker, onRecord.maker)
}
