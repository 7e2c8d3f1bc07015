import { expect, test } from 'vitest'
import { guessedMapping, type Mapping } from '../../../core/import/fields.ts'
import { importedRow } from '../../../core/import/rows.ts'
import { likelyDelimiter } from '../../../core/import/text.ts'
import { en } from '../../../core/words/en/index.ts'
import { must, refusals } from '../must.ts'

test('columns are guessed by their headings, however they are written', () => {
  const headings = [
    'Name',
    'Tel.',
    'E-Mail',
    'Address 1',
    'Post code',
    'Clock type',
    'Serial No.',
    'Shoe size',
  ]
  expect(guessedMapping(headings)).toEqual([
    'name',
    'phone',
    'e-mail',
    'address',
    'address',
    'form',
    'serial',
    null,
  ])
  expect(guessedMapping(['First name', 'Surname', 'Mobile phone'])).toEqual(['name', 'name', 'phone'])
})

const mapping: Mapping = ['name', 'name', 'phone', 'phone', 'address', 'address', 'form', 'dial', 'trains']
const read = (...cells: string[]) => importedRow(cells, 7, mapping, en)

test('columns of one meaning are put together: names on one line, addresses below each other, every number kept', () => {
  const { line, owner, clock } = must(
    read('Maud', ' Dray ', '01632 960447', '', 'The Lodge', 'Orrinford', '', '', ''),
  )
  expect(line).toBe(7)
  expect(owner).toEqual({
    name: 'Maud Dray',
    address: 'The Lodge\nOrrinford',
    country: '',
    notes: '',
    contacts: [{ kind: 'phone', value: '01632 960447', preferred: true }],
  })
  expect(clock).toBeNull()
})

test('a clock is read by the shop’s words or codes, and what the list does not tell nobody has looked at', () => {
  const { clock } = must(read('A', '', '', '', '', '', 'Longcase', 'Painted dial', ''))
  expect(clock).toMatchObject({ form: 'longcase', dial: 'painted', trains: null })
  expect(clock).not.toHaveProperty('power')
  expect(must(read('A', '', '', '', '', '', 'cuckoo clock', '', '1')).clock).toMatchObject({
    form: 'cuckoo',
    dial: 'unknown',
    trains: 1,
  })
})

test('words that are none of the shop’s are told, field by field', () => {
  expect(refusals(read('A', '', '', '', '', '', 'sundial', 'mirror', '4'))).toEqual([
    'import.unknownWord clock.dial',
    'import.unknownWord clock.form',
    'runIn.trains clock.trains',
  ])
})

test('what stands between the cells is told from the first line, whatever stands inside quotes', () => {
  expect(likelyDelimiter('name,phone\nA;B;C;D,1')).toBe(',')
  expect(likelyDelimiter('"Name, given;and\nfamily";phone;mail\n')).toBe(';')
  expect(likelyDelimiter('name\tphone\n')).toBe('\t')
  expect(likelyDelimiter('name')).toBe(',')
})
