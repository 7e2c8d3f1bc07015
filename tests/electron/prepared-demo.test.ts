import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { verified } from '../../db/verify/index.ts'
import { demoLedger } from '../../electron/day/demo-shop.ts'
import { freshDemo } from '../../electron/day/prepared-demo.ts'
import { places } from '../../electron/places.ts'
import { random } from '../chance.ts'
import { ledgerContents } from '../db/ledger-contents.ts'
import { temporaryFolder } from '../db/temporary-ledger.ts'

let place: ReturnType<typeof temporaryFolder>
beforeEach(() => {
  place = temporaryFolder()
})
afterEach(() => place.remove())

const { migrations } = places
const tables = (file: string) => ledgerContents(file).filter(([table]) => table !== 'day_book')

it('the demonstration that is copied is the one that would be played, sound, fresh each time, its clock going on from its last act', async () => {
  const played = join(place.folder, 'played.countwheel')
  const { ledger } = await demoLedger({ file: played, migrations, random })
  ledger.close()
  for (const name of ['first', 'second']) {
    const file = join(place.folder, name, 'demonstration.countwheel')
    const demo = await freshDemo(file, random)
    const faults = [...verified({ read: demo.ledger.read, file, migrations })].flatMap(check => check.faults)
    expect(faults).toEqual([])
    expect(demo.now() >= '2027-03-12T10:30:00.000Z' && demo.now() < '2027-03-12T11:30:00.000Z').toBe(true)
    demo.ledger.close()
    expect(tables(file)).toEqual(tables(played))
  }
})
