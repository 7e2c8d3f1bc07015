import { expect, test } from 'vitest'
import { en } from '../../core/words/en/index.ts'
import { typedLines } from '../../renderer/accounts/typed-entry.tsx'

const told = { words: en, date: (on: string) => `the day ${on}` }
const texts = (value: unknown) => typedLines(value, told).map(({ path, text }) => `${path}: ${text}`)

test('codes and ticks of an entry are told in words, days as the shop writes them, the rest as typed', () => {
  expect(
    texts({
      clock: { form: 'wall', chime: 'four-quarter', serial: '8-day' },
      belongings: [{ item: 'key', custody: 'kept', position: null }],
      dueOn: '2027-03-10',
      covered: true,
      fault: '',
    }),
  ).toEqual([
    `clock.form: ${en.forms.wall}`,
    `clock.chime: ${en.chimes['four-quarter']}`,
    'clock.serial: 8-day',
    `belongings[0].item: ${en.belongings.key}`,
    `belongings[0].custody: ${en.custodies.kept}`,
    'dueOn: the day 2027-03-10',
    `covered: ${en.accounts.dayBook.yes}`,
  ])
})
