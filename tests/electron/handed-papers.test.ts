import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { goesHome } from '../../core/papers/kinds.ts'
import { en } from '../../core/words/en/index.ts'
import { readArchive } from '../../db/archive/read.ts'
import { archiveLines } from '../../db/archive/write.ts'
import { hashOf } from '../../db/file/files-beside.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { keepPaper, keptPaper, keptPaperPath } from '../../db/rows/kept-papers.ts'
import { handedRow } from '../../db/rules/frozen-papers.ts'
import { verified } from '../../db/verify/index.ts'
import { drawnBy, keepPapers } from '../../electron/papers/frozen.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { ledgerContents } from '../db/ledger-contents.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { infoOf, textOf } from '../papers/reading.ts'
import { invoicedRepair } from './billed-shop.ts'
import { openTestShop, type Shop, testSettings } from './handler-fixture.ts'

vi.setConfig({ testTimeout: 60_000 })

let shop: Shop
let repair: Awaited<ReturnType<typeof invoicedRepair>>
beforeEach(async () => {
  shop = await openTestShop()
  repair = await invoicedRepair(shop)
})
afterEach(() => shop.close())

const pdf = async (path: string): Promise<Buffer> => {
  const response = await shop.handle(new Request(`http://ledger/papers/${path}`))
  expect(response.status, path).toBe(200)
  return Buffer.from(await response.arrayBuffer())
}
const handOut = (kind: string, more: Record<string, unknown> = {}): Promise<{ id: number }> =>
  shop.act('papers.handOut', { kind, id: repair.id, size: 'a4', ...more })
const page = (kind = 'ready-letter', id = repair.id) => shop.view(`papers/${kind}/${id}`)
const handed = (id: number) => ({ sort: 'handed', id }) as const
const kept = (id: number) => {
  const row = keptPaper(shop.ledger.read, handed(id))
  if (!row) throw new Error('nothing is kept')
  return row
}
const faults = () => {
  const { file, ledger } = shop
  return [...verified({ read: ledger.read, file, migrations })].flatMap(check => check.faults)
}

describe('a working paper that is handed to the owner', () => {
  it('is frozen as it stands, with its size, its day and who handed it out, and the day book tells of it', async () => {
    const { id } = await handOut('ready-letter', { size: 'letter' })
    const row = handedRow(shop.ledger.read, id)
    expect(row).toMatchObject({
      kind: 'ready-letter',
      ofId: repair.id,
      repairId: repair.id,
      handedAt: shop.clock.at,
      handedOn: '2027-03-01',
      personId: shop.clock.person,
      size: 'letter',
      contentsHash: hashOf(Buffer.from(row.contents)),
    })
    expect(JSON.parse(row.contents)).toMatchObject({ kind: 'ready-letter', owner: { name: 'Rosamund Pell' } })
    expect((await shop.view('dayBook')).rows[0]).toMatchObject({
      act: 'papers.handOut',
      person: 'Ines Marrow',
      repairNumber: repair.number,
      subjectKind: 'repair',
      subjectId: repair.id,
      handedKind: 'ready-letter',
    })
    expect((await page()).copies).toEqual([
      expect.objectContaining({ id, size: 'letter', person: 'Ines Marrow', drawn: null }),
    ])
  })

  it('is kept beside the ledger by the hash of its bytes, which are those the working paper had that day', async () => {
    const asDrawn = await pdf(`of/ready-letter/${repair.id}.pdf?size=a4`)
    const { id } = await handOut('ready-letter')
    expect((await pdf(`handed/${id}.pdf`)).equals(asDrawn)).toBe(true)
    await keepPapers(shop.ledger)
    const { hash, bytes, size } = kept(id)
    expect(readFileSync(keptPaperPath(shop.file, hash)).equals(asDrawn)).toBe(true)
    expect([hash, bytes, size, kept(id).drawnBy]).toEqual([hashOf(asDrawn), asDrawn.length, 'a4', drawnBy])
  })

  it('is years later the very bytes, whatever owner, shop and standing are by then', async () => {
    const { id } = await handOut('ready-letter')
    await keepPapers(shop.ledger)
    const before = await pdf(`handed/${id}.pdf`)
    shop.clock.at = '2031-06-01T09:00:00.000Z'
    await shop.act('shop.changeSettings', {
      shop: { ...testSettings.shop, name: 'Another Bench' },
      place: { ...testSettings.place, paper: 'letter' },
    })
    await shop.act('register.changeOwner', { ownerId: repair.ownerId, name: 'Rosamund Farr' })
    await shop.act('bench.backToBench', { repairId: repair.id, reason: 'It stopped' })
    expect((await pdf(`handed/${id}.pdf`)).equals(before)).toBe(true)
    const view = await page()
    expect(view.against.map(({ code }: { code: string }) => code)).toEqual(['standing.notReady'])
    expect(view.copies).toEqual([
      expect.objectContaining({ id, drawn: expect.objectContaining({ state: 'kept' }) }),
    ])
    const other = await pdf(`handed/${id}.pdf?size=letter`)
    expect(infoOf(other).Subject).toBe(en.papers.drawnAgain)
    expect(textOf(other)).toContain('Thornbury Clock Bench')
  })

  it('speaks of the days that were asked for where it is a statement, and of all time where none were', async () => {
    const period = { from: '2027-01-01', to: '2027-01-31' }
    const { id } = await handOut('statement', { id: repair.ownerId, period })
    expect((await page('statement', repair.ownerId)).copies).toEqual([
      expect.objectContaining({ id, period }),
    ])
    expect(handedRow(shop.ledger.read, id)).toMatchObject({ ownerId: repair.ownerId, repairId: null })
    expect(textOf(await pdf(`handed/${id}.pdf`))).not.toContain(repair.invoice.number)
    const all = await handOut('statement', { id: repair.ownerId })
    expect(textOf(await pdf(`handed/${all.id}.pdf`))).toContain(repair.invoice.number)
  })

  it('stands on the page of the owner that a duplicate was merged into', async () => {
    const { id } = await handOut('statement', { id: repair.ownerId })
    const into = await shop.act('register.addOwner', { name: 'R. Pell' })
    await shop.act('register.mergeOwners', { ownerId: repair.ownerId, intoId: into.id })
    expect((await page('statement', into.id)).copies).toEqual([expect.objectContaining({ id })])
  })

  it('is never changed or taken off the record', async () => {
    await handOut('ready-letter')
    await keepPapers(shop.ledger)
    for (const table of ['handed_papers', 'kept_handed_papers'])
      for (const sql of [`UPDATE ${table} SET size = 'letter'`, `DELETE FROM ${table}`])
        expect(() => shop.ledger.write(tx => tx.run(sql)), sql).toThrow(
          expect.objectContaining({
            cause: expect.objectContaining({ message: expect.stringContaining('never') }),
          }),
        )
  })
})

describe('what is not handed out', () => {
  const refused = async (input: Record<string, unknown>) => {
    const asked = { kind: 'ready-letter', id: repair.id, size: 'a4', ...input }
    const { status, body } = await shop.tryAct('papers.handOut', asked)
    expect((await shop.view('dayBook')).rows[0].act).not.toBe('papers.handOut')
    return [status, ...body.problems.map(({ code, field }: Record<string, string>) => `${code} ${field}`)]
  }

  it('a paper that stays in the shop, one that cannot be drawn, on a size it does not come on, of what there is not', async () => {
    for (const kind of ['tags', 'bench-card'] as const) {
      expect(goesHome(kind)).toBe(false)
      expect(await refused({ kind })).toEqual([422, 'paper.staysHere kind'])
    }
    expect(await refused({ kind: 'poster' })).toEqual([422, 'input.notOneOf kind'])
    expect(await refused({ size: 'a6' })).toEqual([422, 'paper.size size'])
    expect(await refused({ id: 99 })).toEqual([404, 'repair.unknown repairId'])
    expect(await refused({ period: { from: '2027-01-01', to: '2027-01-31' } })).toEqual([
      422,
      'paper.noPeriod period',
    ])
    await shop.act('bench.backToBench', { repairId: repair.id, reason: 'It stopped' })
    expect(await refused({})).toEqual([422, 'standing.notReady repairId'])
  })
})

describe('a copy whose file is missing or damaged', () => {
  it('is named on its page and by the verifying, and drawn again with the mark of it', async () => {
    const { id } = await handOut('ready-letter')
    const bytes = Buffer.concat([await pdf(`handed/${id}.pdf`), Buffer.from('\n% set by hand\n')])
    keepPaper(shop.ledger, handed(id), { size: 'a4', drawnBy: '0.0.1', bytes })
    await keepPapers(shop.ledger)
    expect(faults()).toEqual([])
    const { hash } = kept(id)
    const at = keptPaperPath(shop.file, hash)
    const values = { kind: 'ready-letter', of: repair.number, handedOn: '2027-03-01', hash }
    for (const [state, harm] of [
      ['damaged', () => writeFileSync(at, readFileSync(at).fill(0x20, 100, 101))],
      ['missing', () => rmSync(at)],
    ] as const) {
      harm()
      const file = existsSync(at) && readFileSync(at)
      expect((await page()).copies[0].drawn).toMatchObject({ state })
      expect(faults()).toEqual([{ code: `keptPaper.${state}`, values }])
      const again = await pdf(`handed/${id}.pdf`)
      expect(infoOf(again).Subject).toBe(en.papers.drawnAgain)
      expect(existsSync(at) && readFileSync(at)).toEqual(file)
    }
    expect(en.verify.faults['keptPaper.missing'](values)).toMatch(
      /^The ready letter of 2201 handed out on 2027-03-01 is not beside/,
    )
  })
})

describe('backup and archive', () => {
  const sameBytes = async (file: string, id: number, bytes: Buffer) => {
    const ledger = openLedger(file, { migrations, now: () => shop.clock.at, random })
    try {
      const handle = createHandler({ ledger, now: () => shop.clock.at, pages: shop.folder })
      const response = await handle(new Request(`http://ledger/papers/handed/${id}.pdf`))
      expect(Buffer.from(await response.arrayBuffer()).equals(bytes)).toBe(true)
      expect([...verified({ read: ledger.read, file, migrations })].flatMap(({ faults }) => faults)).toEqual(
        [],
      )
    } finally {
      ledger.close()
    }
  }

  it('have what was handed out: read back, the ledger compares equal and serves the same bytes', async () => {
    const { id } = await handOut('ready-letter')
    const bytes = Buffer.concat([await pdf(`handed/${id}.pdf`), Buffer.from('\n% set by hand\n')])
    keepPaper(shop.ledger, handed(id), { size: 'a4', drawnBy: '0.0.1', bytes })
    const { file } = await shop.act('backup', {})
    const backup = join(shop.folder, 'backups', 'shop.countwheel')
    cpSync(join(shop.folder, 'backups', file), backup)
    await sameBytes(backup, id, bytes)
    const archive = join(shop.folder, 'shop.archive')
    writeFileSync(archive, [...archiveLines(shop.ledger.read, shop.file, () => undefined)].join(''))
    const again = join(shop.folder, 'again.countwheel')
    const copy = join(shop.folder, 'copy.countwheel')
    readArchive(archive, again, { migrations, now: () => shop.clock.at, random }, () => undefined)
    shop.ledger.backUp(copy)
    expect(ledgerContents(again)).toEqual(ledgerContents(copy))
    await sameBytes(again, id, bytes)
  })
})
