import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { archiveLines } from '../../db/archive/write.ts'
import { verified } from '../../db/verify/index.ts'
import { keepPapers } from '../../electron/papers/frozen.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { picture } from '../pictures/pictures.ts'
import { invoicedRepair } from './billed-shop.ts'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'
import { handOver } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const forget = (ownerId: number, reason = 'Asked for by letter') =>
  shop.tryAct('register.forgetOwner', { ownerId, reason })
const codes = (body: { problems: { code: string }[] }) => body.problems.map(({ code }) => code)
const faults = () => {
  const { file, ledger } = shop
  return [...verified({ read: ledger.read, file, migrations })].flatMap(check => check.faults)
}

/** Every byte of the ledger, its log, what stands beside it, a new backup and an archive. */
function everything(): string {
  shop.ledger.backUp(join(shop.folder, 'backup.countwheel'))
  const files = readdirSync(shop.folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => readFileSync(join(entry.parentPath, entry.name)).toString('latin1'))
  const archive = [...archiveLines(shop.ledger.read, shop.file, () => undefined)].join('')
  return [...files, Buffer.from(archive).toString('latin1')].join('\n')
}

describe('an owner without papers issued', () => {
  it('leaves no trace: neither name nor contact nor note, in the file, a backup or an archive', async () => {
    const { id } = await shop.act('register.addOwner', {
      name: 'Philippa Underhay-Moss',
      address: '7 Tallowmarker Row',
      notes: 'Notemarker',
      contacts: [{ kind: 'e-mail', value: 'mailmarker@example.org' }],
    })
    await shop.act('register.changeOwner', {
      ownerId: id,
      name: 'Philippa Underhay',
      address: '7 Tallowmarker Row',
      notes: 'Notemarker again',
    })
    await shop.act('register.addClock', { ownerId: id, form: 'wall', notes: 'Clockmarker' })
    const row = {
      line: 2,
      sameAs: null,
      owner: { name: 'Philippa Underhay', contacts: [{ kind: 'phone', value: '020 7946 0018' }] },
      clock: { form: 'wall', maker: 'Importmarker' },
    }
    await shop.act('register.import', { rows: [row, { ...row, line: 3, owner: { name: 'Dot Quill' } }] })
    await shop.ask('/api/drafts/a1b2c3d4-e5f6', {
      method: 'PUT',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({
        page: 'take-in',
        title: '',
        body: { owner: 'Philippa Underhay', fault: 'Draftmarker' },
      }),
    })
    const markers = ['Underhay', 'Tallowmarker', 'Notemarker', 'mailmarker', 'Clockmarker', 'Draftmarker']
    const before = everything()
    for (const marker of markers) expect(before, marker).toContain(marker)
    for (const { id: one } of (await shop.view('owners')).rows.filter((r: { name: string }) =>
      r.name.includes('Underhay'),
    ))
      expect((await forget(one)).status).toBe(200)
    const after = everything()
    for (const marker of markers) expect(after, marker).not.toContain(marker)
    expect(after).toContain('Dot Quill')
    expect(faults()).toEqual([])
    expect((await shop.ask('/api/find?q=underhay')).body.results).toEqual([])
  })
})

describe('an owner whose clock went home', () => {
  /** A repair from the taking in to the hand-over, paid, with everything that can carry a word about its owner. */
  async function wholeVisit() {
    const repair = await invoicedRepair(shop)
    const { id: repairId } = repair
    const { hash } = (
      await shop.ask('/api/photographs', { method: 'PUT', body: new Uint8Array(picture('quadrants.jpg')) })
    ).body
    await shop.act('photographs.attach', { hash, repairId, moment: 'bench', remark: 'Photomarker' })
    await shop.act('counter.tellOwner', { repairId, about: 'ready', way: 'telephone', text: 'Messagemarker' })
    await shop.act('papers.handOut', { kind: 'ready-letter', id: repairId, size: 'a4', period: null })
    await shop.act('register.addContact', {
      ownerId: repair.ownerId,
      contact: { kind: 'e-mail', value: 'mailmarker@example.org' },
    })
    await shop.act('accounts.pay', { repairId, amount: '475.68', method: 'card' })
    await handOver(shop, repair)
    await keepPapers(shop.ledger)
    return repair
  }

  it('is forgotten but for the papers issued, which stand with the day until which they are kept', async () => {
    const { ownerId, number } = await wholeVisit()
    const asked = await shop.view(`owners/${ownerId}/forget`)
    expect(asked).toMatchObject({ problems: [], repairs: 1, photographs: 1, handedPapers: 1 })
    expect(asked.kept.map((paper: { until: string }) => paper.until)).toEqual(
      asked.kept.map(() => '2037-12-31'),
    )
    expect(asked.kept.length).toBeGreaterThan(3)
    const markers = ['Photomarker', 'Messagemarker', 'mailmarker']
    for (const marker of markers) expect(everything(), marker).toContain(marker)
    const files = (what: string) => readdirSync(join(shop.folder, what), { recursive: true }).length
    const papersBefore = files('shop.papers')
    expect((await forget(ownerId)).status).toBe(200)
    const after = everything()
    for (const marker of markers) expect(after, marker).not.toContain(marker)
    expect(files('shop.papers')).toBeLessThan(papersBefore)
    expect(faults()).toEqual([])
    const view = await shop.view(`repairs/${number}`)
    expect(view.owner.name).toBe(`Forgotten owner ${ownerId}`)
    expect(view.repair.fault).toBe('–')
    expect((await shop.view('documents?kind=invoice')).rows).toHaveLength(1)
    expect((await shop.ask('/papers/1.pdf')).status).toBe(200)
  })

  it('once only tried is not forgotten: nothing is taken off the record or the disk', async () => {
    const { ownerId } = await wholeVisit()
    const before = readdirSync(shop.folder, { recursive: true }).length
    const tried = await shop.ask('/api/register/forgetOwner', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Countwheel-Trial': '1' },
      body: JSON.stringify({ ownerId, reason: 'Asked for' }),
    })
    expect(tried.status).toBe(200)
    expect(readdirSync(shop.folder, { recursive: true }).length).toBe(before)
    expect(faults()).toEqual([])
    expect((await shop.view(`owners/${ownerId}`)).owner.name).toBe('Rosamund Pell')
  })

  it('keeps a photograph that another owner’s repair shows too', async () => {
    const { ownerId } = await wholeVisit()
    const other = await takeInPell(shop, {
      owner: { name: 'Odalys Wren' },
      clock: { form: 'wall', trains: 1 },
    })
    const hash = shop.ledger.read.get<{ hash: string }>('SELECT hash FROM photographs').hash
    await shop.act('photographs.attach', { hash, repairId: other.id, moment: 'intake' })
    await forget(ownerId)
    expect((await shop.ask(`/photographs/${hash}`)).status).toBe(200)
    expect(faults()).toEqual([])
  })
})

describe('an owner cannot be forgotten', () => {
  it('while a clock of theirs is in the shop, or money is open either way', async () => {
    const here = await takeInPell(shop)
    expect(codes((await forget(here.ownerId)).body)).toEqual(['forget.clockHere'])
    const billed = await invoicedRepair(shop, {
      more: { owner: { name: 'Odalys Wren' }, clock: { form: 'wall', trains: 1 } },
    })
    await handOver(shop, billed)
    expect(codes((await forget(billed.ownerId)).body)).toEqual(['forget.moneyOpen'])
    const { problems } = await shop.view(`owners/${billed.ownerId}/forget`)
    expect(problems[0].message).toContain('is open on repair')
  })
})
