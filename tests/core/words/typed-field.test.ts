import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { fields } from '../../../core/words/en/fields.ts'
import { fieldText } from '../../../core/words/typed-field.ts'

it('says the field of an entry in words, with its place in a list counted from one', () => {
  expect(fieldText('clock.chimeCorrects')).toBe('clock, chime corrects itself')
  expect(fieldText('lines[0].quantity')).toBe('lines, 1, quantity')
  expect(fieldText('settings.prices.benchRate')).toBe('settings, prices, bench rate')
})

it('leaves no field of the demonstration’s acts under its own name where that is not words', () => {
  const names = (value: unknown): string[] =>
    typeof value !== 'object' || value === null
      ? []
      : Object.entries(value).flatMap(([key, item]) => [key, ...names(item)])
  const day = JSON.parse(readFileSync(join(import.meta.dirname, '../../../assets/demo/day.json'), 'utf8'))
  const all = new Set<string>(day.flatMap((act: { with: unknown }) => names(act.with)))
  for (const name of all) expect(fieldText(name), name).toMatch(/^[a-z0-9–’° C-]+$/)
  for (const name of [...all].filter(one => one.endsWith('Id'))) expect(Object.keys(fields)).toContain(name)
})
