import { isDialled } from '../owner/dialled.ts'

/** A person as a contact card tells of them. */
export interface Card {
  /** What the card is known by, the same each time. */
  readonly uid: string
  readonly name: string
  readonly addressLines: readonly string[]
  readonly country: string
  /** Phones as E.164 where they could be read as such. */
  readonly phones: readonly CardContact[]
  readonly emails: readonly CardContact[]
}

export interface CardContact {
  readonly value: string
  readonly preferred: boolean
}

/** Text as a property's value (RFC 6350 §3.4). */
const escaped = (text: string): string =>
  text.replace(/[\\,]/g, sign => `\\${sign}`).replace(/\r\n|\r|\n/g, '\\n')

/** Text as one part of a value that has several, where a semicolon would part them. */
const part = (text: string): string => escaped(text).replaceAll(';', '\\;')

const lineOctets = 75

const octets = (text: string): number => new TextEncoder().encode(text).length

/** A line broken so that none is longer than 75 octets, never inside a letter (RFC 6350 §3.2). */
function folded(line: string): string {
  let [text, length] = ['', 0]
  for (const letter of line) {
    const own = octets(letter)
    const breaks = length + own > lineOctets
    text += breaks ? `\r\n ${letter}` : letter
    length = breaks ? 1 + own : length + own
  }
  return text
}

const preference = ({ preferred }: CardContact): string => (preferred ? ';PREF=1' : '')

/** Street lines and country; the parts between (town, region, code) are not told apart in the ledger. */
const address = ({ addressLines, country }: Card): string[] =>
  addressLines.length === 0 && country === ''
    ? []
    : [`ADR:;;${addressLines.map(part).join(',')};;;;${part(country)}`]

/** A phone as `tel:` where it is a global number (RFC 3966), as text otherwise. */
const phone = (contact: CardContact): string =>
  isDialled(contact.value)
    ? `TEL;VALUE=uri${preference(contact)}:tel:${contact.value}`
    : `TEL;VALUE=text${preference(contact)}:${escaped(contact.value)}`

/** The card as vCard 4.0 text (RFC 6350), its lines ended by CRLF. */
export const vcard = (card: Card): string =>
  [
    'BEGIN:VCARD',
    'VERSION:4.0',
    `UID;VALUE=text:${escaped(card.uid)}`,
    `FN:${escaped(card.name)}`,
    ...card.phones.map(phone),
    ...card.emails.map(email => `EMAIL${preference(email)}:${escaped(email.value)}`),
    ...address(card),
    'END:VCARD',
  ]
    .map(line => `${folded(line)}\r\n`)
    .join('')
