import { describe, expect, test } from 'vitest'
import { isLikelyClock, whyLikelyOwner } from '../../../core/register/likely.ts'

const named = (name: string, ...values: string[]) => ({ name, contacts: values.map(value => ({ value })) })

describe('a new owner who may be on record', () => {
  test.each([
    ['rosamund pell', 'Rosamund Pell'],
    ['Zaneta Nunez-Ostrom', 'Żaneta Núñez-Öström'],
    ['  Osric   Tansley ', 'Osric Tansley'],
    ['Pell, Rosamund', 'Rosamund Pell'],
    ['H. Van Tongeren', 'H Vantongeren'],
    ['D’Orrin', "D'Orrin"],
    ['ＤＯＴ Quillfeather', 'Dot Quillfeather'],
  ])('has the same name however it is written: %s is %s', (typed, onRecord) => {
    expect(whyLikelyOwner(named(typed), named(onRecord))).toBe('name')
  })

  test('is told by a telephone or an e-mail address in common, whatever the name', () => {
    const typed = named('R. Pell', '+442079460018')
    expect(whyLikelyOwner(typed, named('Rosamund Pell', 'pell@example.org', '+442079460018'))).toBe('contact')
  })

  test.each([
    ['Rosamund Pell', 'Rosamund Pellow'],
    ['Rosamund Pell', 'R. Pell'],
    ['Pell', 'Rosamund Pell'],
  ])('is another where only part of the name is the same: %s is not %s', (typed, onRecord) => {
    expect(whyLikelyOwner(named(typed), named(onRecord))).toBeNull()
  })
})

describe('a new clock that may be on record', () => {
  const clock = (serial: string, maker = '') => ({ serial, maker })

  test('has the same serial, spaces, dashes and capitals apart, and the same maker or none told', () => {
    expect(isLikelyClock(clock('td118'), clock('TD-118', 'Tarn & Daughter'))).toBe(true)
    expect(isLikelyClock(clock('TD 118', 'TARN + DAUGHTER'), clock('TD-118', 'Tarn & Daughter'))).toBe(true)
    expect(isLikelyClock(clock('TD-118', 'Tarn & Daughter'), clock('TD-118'))).toBe(true)
  })

  test('is another where the maker is another, the serial is, or no serial is told', () => {
    expect(isLikelyClock(clock('TD-118', 'P. Hask'), clock('TD-118', 'Tarn & Daughter'))).toBe(false)
    expect(isLikelyClock(clock('TD-118'), clock('TD-1180'))).toBe(false)
    expect(isLikelyClock(clock('', 'P. Hask'), clock('', 'P. Hask'))).toBe(false)
  })
})
