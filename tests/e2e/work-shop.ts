import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { openingSettings } from '../../core/shop/defaults.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { places } from '../../electron/places.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { asToday } from '../electron/handler-fixture.ts'

export const dayMs = 86_400_000

/** The instant so many days ago. */
export const daysBefore = (days: number): string => new Date(Date.now() - days * dayMs).toISOString()

/** Acts on a ledger file through the ledger's own handler, at the instant its clock is set to; whoever opens it closes it. */
export function openAt(file: string, begin: string, person?: number) {
  const clock = { at: begin }
  const ledger = openLedger(file, {
    migrations: join(places.root, 'migrations'),
    now: () => clock.at,
    random,
  })
  const handle = createHandler({ ledger, now: () => clock.at, pages: '.', played: true })
  const act = async (name: string, input: unknown): Promise<{ id: number }> => {
    const response = await handle(
      new Request(`http://ledger/api/${name.replace('.', '/')}`, {
        method: 'POST',
        headers: {
          'Content-Type': 'application/json',
          ...(person === undefined ? {} : { 'Countwheel-Person': String(person) }),
        },
        body: JSON.stringify(asToday(name, input)),
      }),
    )
    const body = (await response.json()) as { id: number }
    if (!response.ok) throw new Error(`${name}: ${JSON.stringify(body)}`)
    return body
  }
  /** Closes the ledger where its last act left it. */
  const leave = () => ledger.close()
  /** Leaves the ledger as a shop does that made its last entry just now, so that nobody doubts the computer's clock. */
  const close = async () => {
    clock.at = daysBefore(0)
    await act('shop.confirmClock', { today: civilDateOf(clock.at, 'Europe/London') })
    ledger.close()
  }
  return { clock, act, close, leave }
}

/** A ledger file with clocks at work, written through the ledger's own handler some days ago. */
export async function workLedger(clocks: number, daysAgo = 3) {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-work-'))
  const file = join(folder, 'shop.countwheel')
  const { clock: time, act, close } = openAt(file, daysBefore(daysAgo))
  const settings = openingSettings({
    name: 'Weir Lane Clock Bench',
    addressLines: [],
    country: 'GB',
    locale: 'en-GB',
    timeZone: 'Europe/London',
    currency: 'GBP',
    tax: null,
    benchRate: '48.00',
  })
  await act('shop.open', { settings, person: 'Ines Marrow', firstRepairNumber: 2201 })
  const repair = async (n: number): Promise<number> => {
    const clock = {
      form: 'mantel',
      trains: 2,
      power: 'spring',
      duration: '8-day',
      strike: 'rack',
      chime: 'none',
    }
    const { id } = await act('counter.takeIn', { owner: { name: `Owner ${n}` }, clock, fault: 'Stops' })
    const lines = [{ kind: 'labour', description: 'Service', quantity: '4', unit: '48.00' }]
    const estimate = await act('estimates.write', { repairId: id, lines })
    await act('estimates.send', { estimateId: estimate.id, way: 'telephone' })
    const word = { estimateId: estimate.id, answer: 'go-ahead', who: `Owner ${n}`, way: 'telephone' }
    await act('estimates.recordWord', word)
    return id
  }
  for (let n = 1; n <= clocks; n++) {
    const repairId = await repair(n)
    await act('bench.enterLabour', { repairId, task: 'clean', minutes: 30, on: time.at.slice(0, 10) })
    const place = await act('shop.addPlace', { name: `Shelf ${n}`, kind: 'shelf' })
    await act('shelf.startRunIn', { repairId, placeId: place.id })
  }
  await repair(clocks + 1)
  const part = { kind: 'line', name: 'Gut line', unitCost: '2.10', unitPrice: '6.00' }
  const { id: partId } = await act('stores.addPart', part)
  await act('stores.receive', { partId, quantity: 5 })
  await close()
  return { file, remove: () => rmSync(folder, { recursive: true, force: true }) }
}
