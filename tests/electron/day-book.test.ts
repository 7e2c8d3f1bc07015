import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, describe, expect, it } from 'vitest'
import { commitmentTo, firstHash, type Link, rowHash } from '../../db/file/chain.ts'
import { parseDayFile, playDay } from '../../electron/day/day-file.ts'
import { ledgerContents } from '../db/ledger-contents.ts'
import {
  estimateLines,
  freshHandler,
  openTestShop,
  rosamund,
  type Shop,
  takeInPell,
  testSettings,
} from './handler-fixture.ts'

const open: Shop[] = []
const kept = (shop: Shop) => {
  open.push(shop)
  return shop
}
afterEach(() => {
  for (const shop of open.splice(0)) shop.close()
})

/** Closes the shop, looks at its file, and leaves its folder to be removed. */
function closedContents(shop: Shop) {
  shop.ledger.backUp(join(shop.folder, 'copy.countwheel'))
  return ledgerContents(join(shop.folder, 'copy.countwheel'))
}

const replayed = async (acts: unknown) => {
  const target = kept(freshHandler())
  const setNow = (at: string) => {
    target.clock.at = at
  }
  await playDay(
    { handle: target.handle, setNow, setSalt: target.setSalt },
    parseDayFile(JSON.stringify(acts)),
  )
  return target
}

describe('the day book', () => {
  it('has a row for every act with who, when, about what and the checked input, chained by hash', async () => {
    const shop = kept(await openTestShop())
    await takeInPell(shop)
    const { rows } = await shop.view('dayBook')
    expect(rows.map((r: { act: string }) => r.act)).toEqual(['counter.takeIn', 'shop.open'])
    expect(rows[0]).toMatchObject({ person: 'Ines Marrow', subjectKind: 'repair', repairNumber: 2201 })
    shop.ledger.backUp(join(shop.folder, 'copy.countwheel'))
    const db = new Database(join(shop.folder, 'copy.countwheel'), { readonly: true })
    const chain = db
      .prepare<[], Link & { salt: string; input: string; hash: string }>(
        `SELECT at, person_id AS personId, act, version, key, subject_kind AS subjectKind, subject_id AS subjectId, commitment, salt,
          input, previous_hash AS previousHash, hash FROM day_book ORDER BY id`,
      )
      .all()
    db.close()
    expect(chain.map(row => row.previousHash)).toEqual([firstHash, chain[0]?.hash])
    for (const row of chain) {
      expect(commitmentTo(row.salt, row.input)).toBe(row.commitment)
      expect(rowHash(row)).toBe(row.hash)
    }
  })

  it('has no row for an act that was refused', async () => {
    const shop = kept(await openTestShop())
    await shop.tryAct('estimates.write', { repairId: 99, lines: estimateLines })
    expect((await shop.view('dayBook')).rows).toHaveLength(1)
  })

  it('exported is itself a day file: played on an empty ledger it gives an equal ledger', async () => {
    const shop = kept(await openTestShop())
    const repair = await takeInPell(shop)
    shop.clock.at = '2027-03-02T10:00:00.000Z'
    await shop.act('register.addOwner', { name: '@Home Clocks', notes: '@@ twice' })
    const estimate = await shop.act('estimates.write', {
      repairId: repair.id,
      lines: estimateLines,
      high: '600',
    })
    await shop.act('estimates.send', { estimateId: estimate.id, way: 'e-mail' })
    await shop.act('estimates.recordWord', {
      estimateId: estimate.id,
      answer: 'go-ahead',
      who: 'R. Pell',
      way: 'e-mail',
    })
    await shop.act('accounts.pay', {
      repairId: repair.id,
      amount: '100.00',
      method: 'cash',
      tendered: '120.00',
    })
    await shop.act('counter.strikeNote', { noteId: 1, reason: 'It was dust' })
    const acts = await shop.view('dayFile')
    expect(acts).toHaveLength(8)
    const again = await replayed(acts)
    expect(closedContents(again)).toEqual(closedContents(shop))
  })

  it('stops a day file at the first refusal and says which act and why', async () => {
    const acts = [{ at: '2027-03-01T09:20:00.000Z', act: 'counter.takeIn', with: {} }]
    await expect(replayed(acts)).rejects.toThrow('act 1, counter.takeIn')
  })
})

describe('a day file', () => {
  it('refers to what earlier acts made by label, and tells local times by the shop’s own zone', async () => {
    const settings = testSettings
    const shop = await replayed([
      {
        at: '2027-06-01T09:00:00.000Z',
        act: 'shop.open',
        label: 'shop',
        with: { settings, person: 'Ines Marrow' },
      },
      {
        at: '2027-06-01T10:30',
        who: '@shop.personId',
        act: 'register.addOwner',
        label: 'pell',
        with: rosamund,
      },
      { at: '2027-06-01T10:31', act: 'register.changeOwner', with: { ownerId: '@pell', name: 'R. Pell' } },
    ])
    const { rows } = await shop.view('dayBook')
    // British summer time: half past ten on the wall is half past nine UTC.
    expect(rows[1]).toMatchObject({ at: '2027-06-01T09:30:00.000Z', person: 'Ines Marrow' })
    expect((await shop.view('owners/1')).owner.name).toBe('R. Pell')
  })

  it('is read whole before anything is played', () => {
    const second = '{"at":"2027-06-01T10:30","act":"nothing","colour":"green"}'
    expect(() => parseDayFile(`[{"at":"2027-06-01T10:30","act":"shop.open"}, ${second}]`)).toThrow('input')
  })
})

describe('the day book narrowed', () => {
  it('to a part of the shop, a person, a repair with its papers, or days shows these acts alone', async () => {
    const shop = kept(await openTestShop())
    const narrowed = async (asked: Record<string, string>) =>
      (await shop.view(`dayBook?${new URLSearchParams(asked)}`)).rows.map((row: { act: string }) => row.act)
    await takeInPell(shop)
    await shop.act('register.addOwner', { name: 'Tobias Hallam' })
    const { id } = await shop.act('shop.addPerson', { name: 'Dot Quill' })
    expect(await narrowed({ area: 'register' })).toEqual(['register.addOwner'])
    expect(await narrowed({ repair: '2201' })).toEqual(['counter.takeIn'])
    expect(await narrowed({ personId: String(id) })).toEqual([])
    const today = shop.clock.at.slice(0, 10)
    expect((await narrowed({ from: today, to: today })).length).toBeGreaterThan(2)
    expect(await narrowed({ to: '2020-01-01' })).toEqual([])
    expect((await shop.ask('/api/pages/dayBook?area=cellar&from=soon')).body.problems).toHaveLength(2)
  })
})
