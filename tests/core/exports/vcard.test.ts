import fc from 'fast-check'
import ICAL from 'ical.js'
import { expect, it } from 'vitest'
import { type Card, vcard } from '../../../core/exports/vcard.ts'

const card: Card = {
  uid: 'countwheel-owner-7',
  name: 'Żaneta Núñez-Öström, c/o Harbour; Office',
  addressLines: ['Harbour Office', 'Sallow Quay, north'],
  country: 'GB',
  phones: [{ value: '+442079460018', preferred: true }],
  emails: [{ value: 'z@harbour.example', preferred: false }],
}

const property = (text: string, name: string) => {
  const parsed = new ICAL.Component(ICAL.parse(text) as unknown[] as [string, unknown[], unknown[]])
  return parsed.getFirstProperty(name)
}

it('is read back as vCard 4.0 with everything that was written', () => {
  const text = vcard(card)
  expect(text).toContain('VERSION:4.0\r\n')
  expect(property(text, 'fn')?.getFirstValue()).toBe(card.name)
  expect(property(text, 'tel')?.getFirstValue()).toBe('tel:+442079460018')
  expect(property(text, 'tel')?.getParameter('pref')).toBe('1')
  expect(property(text, 'email')?.getFirstValue()).toBe('z@harbour.example')
  expect(property(text, 'adr')?.getFirstValue()).toEqual([
    '',
    '',
    ['Harbour Office', 'Sallow Quay, north'],
    '',
    '',
    '',
    'GB',
  ])
})

it('keeps every line within 75 octets and any name whole (RFC 6350 §3.2, §3.4)', () => {
  const name = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 200 })
    .filter(text => text.trim() === text && !/[\r\p{Cc}]/u.test(text))
  fc.assert(
    fc.property(name, text => {
      const written = vcard({ ...card, name: text })
      for (const line of written.split('\r\n'))
        expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
      expect(property(written, 'fn')?.getFirstValue()).toBe(text)
    }),
  )
})

it('writes a phone that is no global number as text', () => {
  const text = vcard({ ...card, phones: [{ value: '0123, ask for Dot', preferred: false }] })
  expect(text).toContain('TEL;VALUE=text:0123\\, ask for Dot\r\n')
})
