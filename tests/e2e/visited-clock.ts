import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openLedger } from '../../db/file/ledger.ts'
import { places } from '../../electron/places.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { asToday, testSettings } from '../electron/handler-fixture.ts'
import { picture } from '../pictures/pictures.ts'
import { daysBefore } from './work-shop.ts'

const clock = { form: 'cuckoo', trains: 2, power: 'weight', duration: '30-hour', strike: 'count-wheel' }

const firstReport = [
  { component: 'case', grade: 'marked', remark: 'Leaf chipped', pins: [{ view: 'front', x: 0.3, y: 0.6 }] },
  { component: 'dial', grade: 'worn', pins: [{ view: 'dial', x: 0.5, y: 0.3 }] },
]

const secondReport = [
  ...firstReport.slice(0, 1),
  { component: 'dial', grade: 'damaged', pins: [{ view: 'dial', x: 0.6, y: 0.3 }] },
  { component: 'weights', grade: 'missing', pins: [{ view: 'front', x: 0.6, y: 0.85 }] },
]

/** A ledger with a clock that was here, went home unrepaired, and is here again: repair 2202, with a photograph. */
export async function visitedClock() {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-visited-'))
  const file = join(folder, 'shop.countwheel')
  let at = daysBefore(190)
  const ledger = openLedger(file, { migrations: places.migrations, now: () => at, random })
  const handle = createHandler({ ledger, now: () => at, pages: folder, played: true })
  const ask = async (path: string, init: RequestInit) => {
    const response = await handle(new Request(`http://ledger/api/${path}`, init))
    const body = (await response.json()) as { id: number; ownerId: number; clockId: number; hash: string }
    if (!response.ok) throw new Error(`${path}: ${JSON.stringify(body)}`)
    return body
  }
  const act = (name: string, input: unknown) =>
    ask(name.replace('.', '/'), {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(asToday(name, input)),
    })
  await act('shop.open', { settings: testSettings, person: 'Ines Marrow', firstRepairNumber: 2201 })
  const first = await act('counter.takeIn', {
    owner: { name: 'Rosamund Pell' },
    clock,
    fault: 'Stops',
    condition: firstReport,
  })
  const estimate = await act('estimates.write', {
    repairId: first.id,
    lines: [{ kind: 'labour', description: 'Overhaul', quantity: '4', unit: '48.00' }],
  })
  await act('estimates.send', { estimateId: estimate.id, way: 'e-mail' })
  const word = { estimateId: estimate.id, answer: 'declined', who: 'R. Pell', way: 'e-mail' }
  await act('estimates.recordWord', word)
  await act('counter.handOver', { repairId: first.id, toName: 'Rosamund Pell', belongings: [] })
  at = daysBefore(0)
  const { hash } = await ask('photographs', {
    method: 'PUT',
    headers: { 'Content-Type': 'image/jpeg' },
    body: new Uint8Array(picture('quadrants.jpg')),
  })
  await act('counter.takeIn', {
    owner: { id: first.ownerId },
    clock: { id: first.clockId },
    fault: 'Fell',
    photographs: [hash],
    condition: secondReport,
  })
  ledger.close()
  return { file, remove: () => rmSync(folder, { recursive: true, force: true }) }
}
