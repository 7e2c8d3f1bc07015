import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'csv-parse/sync'
import ICAL from 'ical.js'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tables } from '../../db/exports/tables.ts'
import { needTools } from '../tools.ts'
import { billedShop, mixedLines } from './billed-shop.ts'
import { freshHandler, type Shop } from './handler-fixture.ts'
import { workedRepair } from './work-fixture.ts'

let shop: Shop
beforeAll(async () => {
  needTools('hledger')
  shop = await billedShop()
})
afterAll(() => shop.close())

const text = async (path: string) => {
  const response = await shop.handle(new Request(`http://ledger/exports/${path}`))
  expect(response.status, path).toBe(200)
  return response.text()
}
type Row = Readonly<Record<string, string>>
/** The rows read back by a strict reader of RFC 4180. */
const rows = async (path: string): Promise<Row[]> =>
  parse(await text(path), { columns: true, record_delimiter: '\r\n', relax_quotes: false })

const cents = (amount: string | undefined) => Math.round(Number(amount) * 100)
const sum = (all: readonly Row[], name: string) => all.reduce((total, row) => total + cents(row[name]), 0)

describe('tables as CSV', () => {
  it.each(Object.keys(tables))(
    '%s.csv has a header line, its columns, and every row of the ledger',
    async name => {
      const table = tables[name as keyof typeof tables]
      const all = await rows(`${name}.csv`)
      expect(all.length).toBe([...table.rows(shop.ledger.read)].length)
      const header = (await text(`${name}.csv`)).split('\r\n')[0]
      expect(header).toBe(table.columns.join(','))
    },
  )

  it('sets a quote before what a spreadsheet would run, and leaves negative amounts figures', async () => {
    const names = (await rows('owners.csv')).map(owner => owner.name)
    expect(names).toContain(`'=HYPERLINK("x")`)
    const lines = await rows('document-lines.csv')
    expect(lines.map(line => line.description)).toContain(`'${mixedLines[2]?.description}`)
    const amounts = (await rows('payments.csv')).map(payment => payment.amount)
    expect(amounts).toContain('-475.68')
    const phones = (await rows('contacts.csv')).map(contact => contact.value)
    expect(phones).toContain("'+442079460018")
    for (const name of Object.keys(tables))
      for (const row of await rows(`${name}.csv`))
        for (const [column, cell] of Object.entries(row))
          if (!tables[name as keyof typeof tables].amounts.includes(column))
            expect(cell, `${name} ${column}`).not.toMatch(/^[=+\-@\t\r]/)
  })

  it('gives every text as it is in the ledger where that is asked for', async () => {
    expect((await rows('owners.csv?exact=1')).map(owner => owner.name)).toContain('=HYPERLINK("x")')
    const [first] = await rows('day-book.csv?exact=1')
    const kept = shop.ledger.read.get<{ input: string; hash: string }>(
      'SELECT input, hash FROM day_book WHERE id = 1',
    )
    expect(first).toMatchObject({ input: kept?.input, hash: kept?.hash })
  })

  it('keeps texts over several lines, with quotes and commas', async () => {
    expect((await rows('owners.csv?exact=1'))[0]?.address).toBe('11 Quay Street\nThornbury')
  })

  it('has a tax table whose amounts add up to the tax of the period', async () => {
    const period = 'from=2027-01-01&to=2027-12-31'
    const view = await shop.view(`tax?${period}`)
    const all = await rows(`tax.csv?${period}`)
    expect(sum(all, 'amount')).toBe(view.taxMinor)
    expect(
      sum(
        all.filter(row => row.tax),
        'taxable',
      ),
    ).toBe(view.taxableMinor)
    expect(all.some(row => row.tax === '' && row.kind === 'labour')).toBe(true)
  })

  it('refuses what it cannot make and never fails', async () => {
    const status = async (path: string) => (await shop.ask(`/exports/${path}`)).status
    expect(await status('tax.csv?from=2027-02-30&to=2027-03-01')).toBe(422)
    expect(await status('owners.csv?exact=maybe')).toBe(422)
    expect(await status('everything.csv')).toBe(422)
    expect(await status('nothing')).toBeLessThan(500)
    const unopened = freshHandler()
    expect((await unopened.ask('/exports/owners.csv')).status).toBe(422)
    unopened.close()
  })
})

describe('the plain-text journal', () => {
  const hledger = (file: string, ...args: string[]) =>
    execFileSync('hledger', ['-f', file, ...args], { encoding: 'utf8' })

  /** Balances by account in minor units, as hledger adds them up. */
  const balances = (file: string): Map<string, number> => {
    const csv = hledger(file, 'balance', '--flat', '--empty', '-O', 'csv')
    const read = parse(csv, { columns: true }) as Row[]
    return new Map(read.map(row => [row.account ?? '', cents((row.balance ?? '').replace(/ ?GBP$/, ''))]))
  }

  it('passes hledger’s strict check, and its balances are the program’s', async () => {
    const file = join(shop.folder, 'books.journal')
    writeFileSync(file, await text('books.journal'))
    hledger(file, 'check', '--strict')
    const found = balances(file)
    const year = 'from=2027-01-01&to=2027-12-31'
    const owed = await shop.view('owed')
    expect(found.get('assets:owed by owners')).toBe(owed.dueMinor)
    const { byMethod } = await shop.view(`payments?${year}`)
    expect(byMethod.length).toBeGreaterThan(2)
    for (const { method, amountMinor } of byMethod)
      expect(found.get(`assets:received:${method}`) ?? 0, method).toBe(amountMinor)
    const tax = await shop.view(`tax?${year}`)
    for (const { code, rate, taxMinor } of tax.rows)
      expect(found.get(`liabilities:tax:${code} ${rate}%`)).toBe(-taxMinor)
    const income = [...found].filter(([account]) => account.startsWith('income:'))
    const untaxed = tax.untaxed.reduce((all: number, row: { netMinor: number }) => all + row.netMinor, 0)
    expect(income.reduce((all, [, amount]) => all - amount, 0)).toBe(tax.taxableMinor + untaxed)
  })

  it('is refused by hledger once a figure in it is changed: the check can fail', async () => {
    const file = join(shop.folder, 'changed.journal')
    writeFileSync(file, (await text('books.journal')).replace('475.68 GBP', '475.67 GBP'))
    expect(() => execFileSync('hledger', ['-f', file, 'check', '--strict'], { stdio: 'pipe' })).toThrow()
  })

  it('stands hard names, tax codes and a currency without places', async () => {
    const { journalHead, transactionText, accountPart } = await import('../../core/exports/journal.ts')
    const account = `liabilities:tax:${accountPart('*!A:B;  C|\n(x)')}`
    const { minor } = await import('../../core/money/minor.ts')
    const file = join(shop.folder, 'hard.journal')
    const postings = [
      { account: 'assets:a', amount: minor(1205) },
      { account, amount: minor(-1205) },
    ]
    const names = ['=; rm | (x)\n2027-01-01 y', '* ! "Łódź"', '', '~ monthly']
    const entries = ['JPY', 'GBP', 'KWD'].flatMap(currency =>
      names.map(description =>
        transactionText({ on: '2027-03-01', code: 'I(1);', description, currency, postings }),
      ),
    )
    writeFileSync(file, journalHead(['JPY', 'GBP', 'KWD'], ['assets:a', account]) + entries.join(''))
    hledger(file, 'check', '--strict')
    expect(hledger(file, 'balance', 'assets:a', '-N')).toMatch(
      /48\.20 GBP[\s\S]*4820\.? JPY[\s\S]*4\.820 KWD/,
    )
  })
})

describe('calendar and address book', () => {
  it('has estimated dates, run-in dues and ends, outside work and orders as entries with an identity of their own', async () => {
    const repair = await workedRepair(shop)
    await shop.act('bench.sendOut', {
      repairId: repair.id,
      vendor: 'Ashby Wheel Cutting',
      work: 'repair',
      description: 'Strike wheel re-toothed',
      dueOn: '2027-06-20',
    })
    const running = await workedRepair(shop, {
      clock: { form: 'mantel', trains: 2, power: 'spring', duration: '8-day' },
    })
    const place = await shop.act('shop.addPlace', { name: 'Shelf A1', kind: 'shelf' })
    await shop.act('shelf.startRunIn', { repairId: running.id, placeId: place.id })
    const part = await shop.act('stores.addPart', { kind: 'mainspring', name: 'Loop end; 19 mm' })
    await shop.act('stores.order', { partId: part.id, quantity: 2, dueOn: '2027-06-11' })
    const calendar = new ICAL.Component(ICAL.parse(await text('dates.ics')) as [string, unknown[], unknown[]])
    const events = calendar.getAllSubcomponents('vevent').map(event => new ICAL.Event(event))
    const byId = new Map(events.map(event => [event.uid, event]))
    expect(byId.size).toBe(events.length)
    const estimated = byId.get(`estimated-${repair.number}@countwheel`)
    expect(estimated?.startDate.toString()).toBe('2027-03-26')
    expect(estimated?.startDate.isDate).toBe(true)
    expect(events.find(event => event.uid.startsWith('outside-'))?.startDate.toString()).toBe('2027-06-20')
    expect(byId.get(`run-in-end-${running.number}@countwheel`)?.startDate.toString()).toBe('2027-06-15')
    const ordered = events.find(event => event.uid.startsWith('order-'))
    expect([ordered?.startDate.toString(), ordered?.summary]).toEqual([
      '2027-06-11',
      'Order due: Loop end; 19 mm',
    ])
    const dues = events.filter(event => /^run-in-\d/.test(event.uid))
    expect(dues.length).toBeGreaterThan(1)
    for (const due of dues) expect(due.startDate.isDate).toBe(false)
    for (const line of (await text('dates.ics')).split('\r\n'))
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75)
  })

  it('has one card for each owner who was not merged away', async () => {
    const cards = ICAL.parse(await text('owners.vcf')) as unknown as [string, ...unknown[]][]
    const names = cards.map(card =>
      new ICAL.Component(card as [string, unknown[], unknown[]]).getFirstPropertyValue('fn'),
    )
    const kept = (await rows('owners.csv?exact=1')).filter(owner => owner.merged_into === '')
    expect(names).toEqual(kept.map(owner => owner.name))
  })
})
