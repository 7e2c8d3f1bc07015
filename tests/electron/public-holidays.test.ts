import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openTestShop, type Shop } from './handler-fixture.ts'

let shop: Shop
beforeAll(async () => {
  shop = await openTestShop()
})
afterAll(() => shop.close())

describe('public holidays offered as closed days', () => {
  it('are those of the country and region, with the regions to choose from and the attribution their licence asks for', async () => {
    const { attribution, regions, days } = await shop.view('publicHolidays?country=GB&region=SCT&year=2027')
    expect(attribution).toMatch(/CC BY-SA/)
    expect(regions).toMatchObject({ SCT: 'Scotland' })
    // 2 January is a bank holiday in Scotland alone (Banking and Financial Dealings Act 1971, Schedule 1); in 2027 it is a Saturday.
    expect(days.map((day: { onDate: string }) => day.onDate)).toContain('2027-01-04')
  })

  it('can be entered as closed days as they come', async () => {
    const { days } = await shop.view('publicHolidays?country=GB&region=&year=2027')
    expect(days.length).toBeGreaterThan(3)
    expect(await shop.act('shop.closeOn', { days })).toEqual({ days: days.length })
    const { holidays } = await shop.view('shop')
    expect(holidays.map((day: { onDate: string }) => day.onDate)).toEqual(
      [...new Set(days.map((day: { onDate: string }) => day.onDate))].sort(),
    )
  })

  it('are refused for a place or year that is not known, with the field', async () => {
    for (const [asked, field] of [
      ['country=ZZ&year=2027', 'country'],
      ['country=GB&region=NOWHERE&year=2027', 'region'],
      ['country=GB&year=1', 'year'],
      ['country=GB&year=next', 'year'],
    ]) {
      const { status, body } = await shop.ask(`/api/pages/publicHolidays?${asked}`)
      expect(status).toBe(422)
      expect(body.problems.map((p: { field: string }) => p.field)).toEqual([field])
    }
  })
})
