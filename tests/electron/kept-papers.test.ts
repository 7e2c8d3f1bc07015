import { cpSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { en } from '../../core/words/en/index.ts'
import { folderBeside, hashOf } from '../../db/file/files-beside.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { allDocuments } from '../../db/read/accounts.ts'
import { keepPaper, keptPaper, keptPaperPath, nonePassed } from '../../db/rows/kept-papers.ts'
import { verified } from '../../db/verify/index.ts'
import { drawnBy, keepNext, keepPapers } from '../../electron/papers/frozen.ts'
import { paperKeeper } from '../../electron/papers/keeper.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { infoOf } from '../papers/reading.ts'
import { invoicedRepair } from './billed-shop.ts'
import { openTestShop, type Shop, takeInPell, testSettings } from './handler-fixture.ts'

let shop: Shop
let invoiceId: number
beforeEach(async () => {
  shop = await openTestShop()
  invoiceId = (await invoicedRepair(shop)).invoice.id
})
afterEach(() => shop.close())
// Other programs read the papers here: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 30_000 })

const paper = async (query = '', id = invoiceId): Promise<Buffer> => {
  const response = await shop.handle(new Request(`http://ledger/papers/${id}.pdf${query}`))
  expect(response.status).toBe(200)
  return Buffer.from(await response.arrayBuffer())
}
const issued = (id: number) => ({ sort: 'issued', id }) as const
const drawn = async () => (await shop.view(`documents/${invoiceId}`)).drawn
const row = () => {
  const kept = keptPaper(shop.ledger.read, issued(invoiceId))
  if (!kept) throw new Error('nothing is kept')
  return kept
}
const path = () => keptPaperPath(shop.file, row().hash)
const faults = () => {
  const { file, ledger } = shop
  return [...verified({ read: ledger.read, file, migrations })].flatMap(check => check.faults)
}

/** Keeps the invoice as a program of other typefaces drew it: not the bytes that are drawn today. */
async function keptByAnother(): Promise<Buffer> {
  const bytes = Buffer.concat([await paper(), Buffer.from('\n% set by hand\n')])
  keepPaper(shop.ledger, issued(invoiceId), { size: 'a4', drawnBy: '0.0.1', bytes })
  return bytes
}

describe('a paper that was issued', () => {
  it('is kept under the hash of its bytes, with its length, its size and the program that drew it', async () => {
    await keepPapers(shop.ledger)
    const { hash, bytes, size } = row()
    const file = readFileSync(path())
    expect([hashOf(file), file.length]).toEqual([hash, bytes])
    expect([size, row().drawnBy]).toEqual(['a4', drawnBy])
    expect(drawnBy).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version)
  })

  it('is served as the very bytes that were kept, also where they would be drawn otherwise today', async () => {
    const bytes = await keptByAnother()
    await keepPapers(shop.ledger)
    expect((await paper()).equals(bytes)).toBe(true)
    expect((await paper('?size=a4')).equals(bytes)).toBe(true)
    expect(await drawn()).toMatchObject({ state: 'kept', size: 'a4', drawnBy: '0.0.1' })
  })

  it('is served on the size it was issued on when nobody asks for one, whatever paper the shop prints on by now', async () => {
    await keepPapers(shop.ledger)
    const before = await paper()
    const place = { ...testSettings.place, paper: 'letter' }
    await shop.act('shop.changeSettings', { place })
    expect((await paper()).equals(before)).toBe(true)
    expect(infoOf(before).Subject).toBeUndefined()
  })

  it('on another size is drawn again and says so of itself', async () => {
    await keepPapers(shop.ledger)
    const letter = infoOf(await paper('?size=letter'))
    expect(letter['Page size']).toContain('letter')
    expect(letter.Subject).toBe(en.papers.drawnAgain)
  })

  it('has the same bytes before it is kept as after', async () => {
    const before = await paper()
    await keepPapers(shop.ledger)
    expect((await paper()).equals(before)).toBe(true)
    expect(readFileSync(path()).equals(before)).toBe(true)
  })

  it('once kept is never changed or taken off the record', async () => {
    await keepPapers(shop.ledger)
    keepPaper(shop.ledger, issued(invoiceId), { size: 'letter', drawnBy: '9', bytes: Buffer.from('other') })
    expect(row()).toMatchObject({ size: 'a4', drawnBy })
    for (const sql of ['UPDATE kept_papers SET bytes = 1', 'DELETE FROM kept_papers'])
      expect(() => shop.ledger.write(tx => tx.run(sql)), sql).toThrow()
  })
})

describe('a kept paper whose file is missing or damaged', () => {
  it('is named on its page and by the verifying, and drawn again with the mark of it', async () => {
    await keptByAnother()
    await keepPapers(shop.ledger)
    const at = path()
    const named = { kind: 'invoice', number: 'I0001', hash: row().hash }
    for (const [state, harm] of [
      ['damaged', () => writeFileSync(at, readFileSync(at).fill(0x20, 100, 101))],
      ['missing', () => rmSync(at)],
    ] as const) {
      harm()
      const file = existsSync(at) && readFileSync(at)
      expect(await drawn()).toMatchObject({ state })
      expect(faults()).toEqual([{ code: `keptPaper.${state}`, values: named }])
      expect(infoOf(await paper()).Subject).toBe(en.papers.drawnAgain)
      expect(existsSync(at) && readFileSync(at)).toEqual(file)
    }
  })

  it('is served as it was where drawing it gives the bytes that were kept', async () => {
    await keepPapers(shop.ledger)
    const before = await paper()
    rmSync(path())
    expect((await paper()).equals(before)).toBe(true)
    expect(existsSync(path())).toBe(false)
  })
})

describe('a file where the folder of papers should be', () => {
  it('keeps no paper from being served, and a backup says what stands in its way', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined)
    await paper()
    rmSync(folderBeside(shop.file, 'papers'), { recursive: true, force: true })
    writeFileSync(folderBeside(shop.file, 'papers'), 'not a folder')
    expect((await paper()).subarray(0, 5).toString()).toBe('%PDF-')
    expect(faults()).toEqual([])
    const asked = { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{}' }
    const { status, body } = await shop.ask('/api/backup', asked)
    expect([status, body.problems[0].code]).toEqual([422, 'folder.isAFile'])
    vi.restoreAllMocks()
  })
})

describe('the keeper of papers', () => {
  const kept = (id: number) =>
    vi.waitFor(() => expect(keptPaper(shop.ledger.read, issued(id))).toBeDefined(), { timeout: 20_000 })

  it('begins with what an earlier run issued and did not draw, and goes on when it is woken', async () => {
    const keeper = paperKeeper(shop.ledger)
    await kept(invoiceId)
    const { claimCheckId } = await takeInPell(shop)
    keeper.wake()
    await kept(claimCheckId)
    keeper.stop()
  })

  it('keeps nothing more once it is stopped', async () => {
    await keepNext(shop.ledger, nonePassed, () => true)
    expect(readdirSync(folderBeside(shop.file, 'papers')).filter(name => name.length === 2)).toEqual([])
  })
})

describe('a backup', () => {
  it('has every paper issued so far, and a ledger put back from it serves the same bytes', async () => {
    const bytes = await keptByAnother()
    const { file } = await shop.act('backup', {})
    const folder = join(shop.folder, 'backups')
    shop.ledger.close()
    for (const ending of ['', '-wal']) rmSync(`${shop.file}${ending}`, { force: true })
    rmSync(folderBeside(shop.file, 'papers'), { recursive: true })
    cpSync(join(folder, file), shop.file)
    cpSync(join(folder, 'shop.papers'), folderBeside(shop.file, 'papers'), { recursive: true })
    const again = openLedger(shop.file, { migrations, now: () => shop.clock.at, random })
    try {
      const handle = createHandler({ ledger: again, now: () => shop.clock.at, pages: shop.folder })
      const response = await handle(new Request(`http://ledger/papers/${invoiceId}.pdf`))
      expect(Buffer.from(await response.arrayBuffer()).equals(bytes)).toBe(true)
      const checks = [...verified({ read: again.read, file: shop.file, migrations })]
      expect(checks.flatMap(check => check.faults)).toEqual([])
      expect(checks.find(check => check.name === 'keptPapers')?.looked).toBe(allDocuments(again.read).length)
    } finally {
      again.close()
    }
  })
})
