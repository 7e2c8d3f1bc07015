import { describe, expect, it } from 'vitest'
import { keptContact, phoneReading, phoneText } from '../../../core/owner/contact.ts'

const phone = (value: string, country: string) =>
  keptContact({ kind: 'phone', value, preferred: false }, country, 'contact')

describe('a contact', () => {
  // ITU-T E.164; North American and UK numbers set aside for use in drama.
  it('keeps a phone as E.164, read with the shop’s country where no prefix is written', () => {
    const kept = [
      ['(201) 555-0123', 'US', '+12015550123'],
      ['020 7946 0018', 'GB', '+442079460018'],
      ['+44 20 7946 0018', 'US', '+442079460018'],
      [' 01632 960-114 ', 'GB', '+441632960114'],
    ] as const
    for (const [typed, country, e164] of kept)
      expect(phone(typed, country)).toMatchObject({ ok: true, value: { value: e164 } })
  })

  it('refuses what cannot be dialled, on its own field', () => {
    for (const typed of ['12', 'none', '+999 1234 5678', ''])
      expect(phone(typed, 'GB')).toEqual({
        ok: false,
        problems: [{ code: 'input.notAPhone', field: 'contact.value' }],
      })
  })

  it('keeps everything that was written where words or an extension stand beside the number', () => {
    for (const written of ['020 7946 0018 (evenings)', '020 7946 0018 ext 4', 'Ines 020 7946 0018'])
      expect(phone(written, 'GB')).toMatchObject({ ok: true, value: { value: written } })
  })

  it('keeps what is no number as it is written where that is asked for', () => {
    const entry = { kind: 'phone', value: ' by way of the baker ', preferred: true, asWritten: true } as const
    expect(keptContact(entry, 'GB', 'contact')).toEqual({
      ok: true,
      value: { kind: 'phone', value: 'by way of the baker', preferred: true },
    })
  })

  // Ofcom sets 01632 960 aside for drama: it is dialled nowhere, and the numbering plan in the library's metadata leaves it out.
  it('tells a number that the country’s numbering plan gives out from one that it does not', () => {
    expect(phoneReading('020 7946 0018', 'GB')).toEqual({ kept: '+442079460018', inPlan: true })
    expect(phoneReading('01632 960114', 'GB')).toEqual({ kept: '+441632960114', inPlan: false })
    expect(phoneReading('020 7946 00', 'GB')).toEqual({ kept: '020 7946 00', inPlan: false })
    expect(phoneReading('twelve', 'GB')).toEqual({ kept: null, inPlan: false })
  })

  it('is spaced with its country’s prefix when it is read', () => {
    expect(phoneText('+441632960114')).toBe('+44 1632 960114')
    expect(phoneText('+12015550123')).toBe('+1 201 555 0123')
  })

  it('keeps an e-mail address in lower case and refuses what is none', () => {
    const mail = (value: string) => keptContact({ kind: 'e-mail', value, preferred: false }, 'GB', 'contact')
    expect(mail('R.Pell@Pell.Example')).toMatchObject({ ok: true, value: { value: 'r.pell@pell.example' } })
    for (const wrong of ['pell', 'pell@', '@pell.example', 'a b@pell.example'])
      expect(mail(wrong).ok).toBe(false)
  })
})
