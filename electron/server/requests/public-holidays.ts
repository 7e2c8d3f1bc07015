import { accepted } from '../../../db/rules/checked-in.ts'

/**
 * The public holidays of a place and year, the regions to choose from, and the words the data's licence asks for. The calendars are
 * large and seldom asked for: they are read in when they first are.
 */
export async function publicHolidaysView(country: string, region: string, year: number) {
  const { holidayRegions, holidaysAttribution, publicHolidays } = await import('../holidays.ts')
  const days = accepted(publicHolidays(country, region, year))
  return {
    attribution: holidaysAttribution,
    regions: holidayRegions(country),
    days: days.map(({ date, name }) => ({ onDate: date, name })),
  }
}
