import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { beforeAll, expect, it } from 'vitest'
import { verified } from '../../db/verify/index.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { needTools } from '../tools.ts'
import { invoicedRepair, mixedLines } from './billed-shop.ts'
import { openTestShop, type Shop, testSettings } from './handler-fixture.ts'

beforeAll(() => needTools('hledger'))

const year = 'from=2027-01-01&to=2027-12-31'
const methods = ['cash', 'card', 'account'] as const

/** One thing a person may try on one of the two repairs; the shop may well refuse it. */
const anyAct = fc.record({
  on: fc.constantFrom(0, 1),
  what: fc.constantFrom(
    'pay',
    'pay',
    'pay',
    'refund',
    'credit',
    'credit',
    'writeOff',
    'takeBack',
    'payBack',
    'count',
  ),
  cents: fc.integer({ min: 1, max: 30_000 }),
  line: fc.nat(2),
  method: fc.constantFrom(...methods),
})
type Act = typeof anyAct extends fc.Arbitrary<infer A> ? A : never

interface Billed {
  readonly id: number
  readonly number: number
  readonly ownerId: number
  readonly invoice: { readonly id: number }
}

function attempt(shop: Shop, repairs: readonly Billed[], { on, what, cents, line, method }: Act) {
  const { id, ownerId, invoice } = repairs[on] as Billed
  const amount = (cents / 100).toFixed(2)
  const inCoins = ((Math.ceil(cents / 5) * 5) / 100).toFixed(2)
  const money = { repairId: id, amount: method === 'cash' ? inCoins : amount, method }
  const acts = {
    pay: () => shop.tryAct('accounts.pay', { ...money, restToAccount: method !== 'account' }),
    refund: () => shop.tryAct('accounts.refund', money),
    credit: () =>
      shop.tryAct('accounts.credit', {
        invoiceId: invoice.id,
        reason: 'Less was done',
        lines: cents > 29_000 ? null : [{ line, amount: (cents / 1000).toFixed(2) }],
      }),
    writeOff: () =>
      shop.tryAct('accounts.writeOff', { repairId: id, amount, cause: 'courtesy', reason: 'Late by us' }),
    takeBack: () => shop.tryAct('accounts.takeBackWriteOff', { repairId: id, reason: 'Paid after all' }),
    payBack: () => shop.tryAct('accounts.payBack', { ownerId, amount: inCoins, method: 'cash' }),
    count: () => shop.tryAct('accounts.countDrawer', { counted: amount, remark: 'As it lay' }),
  } as const
  return acts[what]()
}

const sum = (all: readonly number[]) => all.reduce((total, one) => total + one, 0)

/** Balances by account in minor units, as hledger adds up the shop's journal after its strict check. */
async function journalBalances(shop: Shop): Promise<(account: string) => number> {
  const file = join(shop.folder, 'books.journal')
  const response = await shop.handle(new Request('http://ledger/exports/books.journal'))
  writeFileSync(file, await response.text())
  execFileSync('hledger', ['-f', file, 'check', '--strict'])
  const csv = execFileSync('hledger', ['-f', file, 'balance', '--flat', '--empty', '-O', 'csv'], {
    encoding: 'utf8',
  })
  const rows = parse(csv, { columns: true }) as Record<string, string>[]
  const cents = rows.map(
    row => [row.account ?? '', Math.round(Number((row.balance ?? '').replace(/ ?GBP$/, '')) * 100)] as const,
  )
  return prefix =>
    0 + sum(cents.filter(([account]) => account.startsWith(prefix)).map(([, balance]) => balance))
}

async function tie(shop: Shop, repairs: readonly Billed[]): Promise<void> {
  const faults = [...verified({ read: shop.ledger.read, file: shop.file, migrations })]
    .filter(({ name }) => !['photographs', 'keptPapers'].includes(name))
    .flatMap(check => check.faults)
  expect(faults).toEqual([])
  const views = await Promise.all(repairs.map(({ number }) => shop.view(`repairs/${number}`)))
  const owed = await shop.view('owed')
  for (const { repair, money } of views) {
    const { billed, paid, writtenOff, rounded, due } = money.balance
    expect(billed - paid - writtenOff - rounded).toBe(due)
    expect(repair.dueMinor).toBe(due)
    expect(sum(money.payments.map((one: { amountMinor: number }) => one.amountMinor))).toBe(paid)
    expect(billed).toBeGreaterThanOrEqual(0)
  }
  const dues = sum(views.map(view => view.money.balance.due))
  const held = sum(owed.accounts.map((one: { heldMinor: number }) => one.heldMinor))
  const owners = await Promise.all(
    [...new Set(repairs.map(({ ownerId }) => ownerId))].map(id => shop.view(`ownerAccounts/${id}?${year}`)),
  )
  expect(sum(owners.map(({ balance }) => balance))).toBe(dues - held)

  const journal = await journalBalances(shop)
  expect(journal('assets:owed by owners')).toBe(dues)
  expect(journal('liabilities:owners’ accounts')).toBe(0 - held)
  const account = async (name: string) => (await shop.view(`account?name=${name}&${year}`)).afterMinor
  expect(await account('owed')).toBe(dues)
  expect(await account('held')).toBe(held)
  expect(await account('cash')).toBe(journal('assets:received:cash'))
  expect(await account('taken')).toBe(journal('assets:taken'))
  expect(await account('writtenOff')).toBe(journal('expenses:written off'))
  expect(await account('rounding')).toBe(journal('expenses:cash rounding'))
  expect(await account('tax')).toBe(0 - journal('liabilities:tax'))
  expect(await account('income')).toBe(0 - journal('income'))

  const { rows } = await shop.view('documents')
  const bills = rows.filter(({ kind }: { kind: string }) => ['invoice', 'credit-note'].includes(kind))
  expect(await account('tax')).toBe(sum(bills.map((bill: { taxMinor: number }) => bill.taxMinor)))
}

it('payments, credits, write-offs, accounts, counts, tax, day book and journal tie to the cent, whatever is tried', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(anyAct, { minLength: 6, maxLength: 14 }), async acts => {
      const shop = await openTestShop()
      try {
        await shop.act('shop.changeSettings', { cash: { step: '0.05' } })
        const first = await invoicedRepair(shop, { lines: mixedLines })
        const second = await invoicedRepair(shop, { more: { owner: { id: first.ownerId } } })
        const repairs = [first, second]
        let done = 0
        for (const act of acts) if ((await attempt(shop, repairs, act)).status === 200) done += 1
        const { rows } = await shop.view('dayBook')
        const written = rows.filter(
          ({ act }: { act: string }) => act.startsWith('accounts.') && act !== 'accounts.invoice',
        )
        expect(written.length).toBe(done)
        await tie(shop, repairs)
      } finally {
        shop.close()
      }
    }),
    { numRuns: 12 },
  )
}, 120_000)

it('tax on payments comes to the tax of the invoices once everything is paid and nothing written off, through accounts and credits', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(anyAct, { minLength: 4, maxLength: 10 }), async acts => {
      const shop = await openTestShop()
      try {
        await shop.act('shop.changeSettings', { tax: { ...testSettings.tax, due: 'payment' } })
        const first = await invoicedRepair(shop, { lines: mixedLines })
        const second = await invoicedRepair(shop, { more: { owner: { id: first.ownerId } } })
        const kept = acts.filter(({ what }) => what !== 'writeOff')
        for (const act of kept) await attempt(shop, [first, second], act)
        for (const { number, id } of [first, second]) {
          const { due } = (await shop.view(`repairs/${number}`)).money.balance
          if (due > 0)
            await shop.act('accounts.pay', { repairId: id, amount: (due / 100).toFixed(2), method: 'card' })
        }
        const paid = await shop.view(`tax?${year}`)
        await shop.act('shop.changeSettings', { tax: testSettings.tax })
        expect(paid.taxMinor).toBe((await shop.view(`tax?${year}`)).taxMinor)
      } finally {
        shop.close()
      }
    }),
    { numRuns: 12 },
  )
}, 120_000)
