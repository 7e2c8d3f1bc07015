import { describe, expect, it } from 'vitest'
import { type MessageFacts, messageText } from '../../../core/messages/message-text.ts'
import { minor } from '../../../core/money/minor.ts'
import { type MessageAbout, messageAbouts } from '../../../core/vocabulary/work.ts'
import { en } from '../../../core/words/en/index.ts'
import { formats } from '../../../core/words/format.ts'

const facts: MessageFacts = {
  owner: 'Rosamund Pell',
  shop: 'Marrow & Vane',
  phone: '01632 960 114',
  repairNumber: 2201,
  clock: 'bracket clock',
  estimatedOn: '2027-03-26',
  due: minor(26736),
  estimate: { number: '2201/1', total: minor(47568), validUntil: '2027-03-31' },
  finding: 'The barrel hook is cracked.',
}
const british = formats({ locale: 'en-GB', timeZone: 'Europe/London', currency: 'GBP' })
const text = (about: MessageAbout, more: Partial<MessageFacts> = {}) =>
  messageText(about, { ...facts, ...more }, en, british)

describe('a message to an owner', () => {
  it('greets by name, says what it is about and closes with the repair and the shop', () => {
    for (const about of messageAbouts.filter(a => a !== 'other')) {
      expect(text(about)).toMatch(/^Dear Rosamund Pell,\n\n[A-Z]/)
      expect(text(about)).toMatch(/Repair 2201\nMarrow & Vane\n01632 960 114$/)
    }
  })

  it('says what is to pay only when something is', () => {
    expect(text('ready')).toContain('There is £267.36 to pay.')
    expect(text('ready', { due: minor(0) })).not.toContain('to pay')
  })

  it('speaks of an estimated date, of the test in it, and never of a promise', () => {
    expect(text('delay')).toContain(`We now estimate ${british.longDate('2027-03-26')}.`)
    expect(text('delay')).toContain('test')
    for (const about of messageAbouts) expect(text(about)).not.toMatch(/promis/i)
  })

  it('quotes what was found and the estimate that goes with it', () => {
    expect(text('finding')).toContain(
      'The barrel hook is cracked. Estimate 2201/1 comes to £475.68, valid until 31 Mar 2027.',
    )
    expect(text('finding', { estimate: null, finding: null })).toContain(
      'could not be seen before. Please tell us',
    )
  })

  it('leaves a message of the writer’s own empty', () => {
    expect(text('other')).toBe('')
  })
})
