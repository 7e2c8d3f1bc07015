import { join } from 'node:path'
import { minor } from '../../core/money/minor.ts'
import { openingSettings } from '../../core/shop/defaults.ts'
import { openShop } from '../../db/books/shop.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { clocks, goAheads, owners, repairs } from '../../db/schema/index.ts'
import { random } from '../chance.ts'
import { migrations, now, temporaryFolder } from './temporary-ledger.ts'

/** An open shop on a real file with one repair that may be worked on, for tests that call the books directly. */
export function workLedger() {
  const place = temporaryFolder()
  const ledger = openLedger(join(place.folder, 'shop.countwheel'), { migrations, now, random })
  const at = '2027-03-01T09:00:00.000Z'
  const settings = openingSettings({
    name: 'Thornbury Clock Bench',
    addressLines: [],
    country: 'GB',
    locale: 'en-GB',
    timeZone: 'Europe/London',
    currency: 'GBP',
    tax: null,
    benchRate: '48.00',
  })
  const { personId } = openShop(
    ledger,
    { at, personId: null },
    { settings, person: 'Ines Marrow', firstRepairNumber: 2201 },
  )
  const repairId = ledger.write(tx => {
    const owner = tx.insert(owners).values({ name: 'Rosamund Pell', sinceAt: at }).returning().get()
    const clock = tx
      .insert(clocks)
      .values({ form: 'torsion', trains: 1, power: 'spring', duration: '400-day' })
      .returning()
      .get()
    const repair = tx
      .insert(repairs)
      .values({
        number: 2201,
        clockId: clock.id,
        ownerId: owner.id,
        takenInAt: at,
        fault: 'Stops',
        scope: 'service',
        stageSince: at,
      })
      .returning()
      .get()
    tx.insert(goAheads)
      .values({
        repairId: repair.id,
        at,
        answer: 'go-ahead',
        who: 'Rosamund Pell',
        way: 'telephone',
        limitMinor: minor(40_000),
      })
      .run()
    return repair.id
  })
  return {
    ledger,
    personId,
    repairId,
    doing: (instant: string) => ({ at: instant, personId }),
    close() {
      ledger.close()
      place.remove()
    },
  }
}
