import Holidays from 'date-holidays'
import type { CivilDate } from '../../core/calendar/civil.ts'
import { bad, type Checked, good, type Problem, problem } from '../../core/problems.ts'

/** A day the shop is likely to be shut; the owner of the shop may change, add or strike out any of them. */
export interface PublicHoliday {
  readonly date: CivilDate
  readonly name: string
}

/** To be shown wherever the holidays are offered: the data’s licence asks for it. */
export const holidaysAttribution =
  'Public holidays: date-holidays, data under CC BY-SA 3.0, from Wikipedia and other open sources.'

/**
 * The public holidays of a year, substitute days included, in order of date. `country` and `region` are ISO 3166
 * codes without the country’s prefix (`GB`, `ENG`); an empty region is the country’s own list. Problems:
 * `holidays.country`, `holidays.region`, `holidays.year` (1900 to 2200).
 */
export function publicHolidays(country: string, region: string, year: number): Checked<PublicHoliday[]> {
  const problems = placeProblems(country, region)
  if (!Number.isInteger(year) || year < 1900 || year > 2200) problems.push(problem('holidays.year', 'year'))
  if (problems.length > 0) return bad(problems)
  const calendar = region === '' ? new Holidays(country) : new Holidays(country, region)
  const found = calendar.getHolidays(year).filter(({ type }) => type === 'public')
  return good(found.map(({ date, name }) => ({ date: date.slice(0, 10), name })))
}

/** The regions of a country that have holidays of their own: codes as `publicHolidays` takes them, and names. */
export const holidayRegions = (country: string): Readonly<Record<string, string>> =>
  new Holidays().getStates(country) ?? {}

function placeProblems(country: string, region: string): Problem[] {
  const known = new Holidays()
  if (!Object.hasOwn(known.getCountries(), country))
    return [problem('holidays.country', 'country', { country })]
  return region === '' || Object.hasOwn(holidayRegions(country), region)
    ? []
    : [problem('holidays.region', 'region', { region })]
}
