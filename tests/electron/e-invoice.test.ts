import { afterAll, beforeAll, expect, it } from 'vitest'
import { brokenRules, parsedUbl, textAt } from '../core/e-invoice/checker.ts'
import { billedShop, invoicedRepair } from './billed-shop.ts'
import { type Shop, testSettings } from './handler-fixture.ts'

let shop: Shop
interface Paper {
  readonly id: number
  readonly kind: string
  readonly number: string
  readonly totalMinor: number
}
let papers: Paper[]
beforeAll(async () => {
  shop = await billedShop()
})
afterAll(() => shop.close())

const xml = async ({ id }: { id: number }) => {
  const response = await shop.handle(new Request(`http://ledger/papers/${id}.xml`))
  return { status: response.status, type: response.headers.get('content-type'), text: await response.text() }
}

it('is not there until the shop turns it on', async () => {
  papers = (await shop.view('documents')).rows
  const invoice = papers.find(paper => paper.kind === 'invoice')
  const { status, text } = await xml(invoice ?? { id: 0 })
  expect(status).toBe(422)
  expect(text).toContain('eInvoice.off')
})

it('says that papers issued before the shop had a tax registration have none', async () => {
  await shop.act('shop.changeSettings', { eInvoice: { on: true } })
  const { status, text } = await xml(papers.find(paper => paper.kind === 'invoice') ?? { id: 0 })
  expect(status).toBe(422)
  expect(text).toContain('eInvoice.taxNumber')
})

it('is had of every invoice and credit note with a registration, obeys the rules, and is the same each time', async () => {
  shop.close()
  shop = await billedShop({ taxNumber: 'GB 000 0000 00' })
  await shop.act('shop.changeSettings', { eInvoice: { on: true } })
  papers = (await shop.view('documents')).rows
  const billed = papers.filter(({ kind }) => kind === 'invoice' || kind === 'credit-note')
  expect(billed.length).toBeGreaterThan(5)
  for (const paper of billed) {
    const { status, type, text } = await xml(paper)
    expect(status, paper.number).toBe(200)
    expect(type).toContain('application/xml')
    expect(brokenRules(text), paper.number).toEqual([])
    const { name, root } = parsedUbl(text)
    expect(name).toBe(paper.kind === 'invoice' ? 'Invoice' : 'CreditNote')
    expect(textAt(root, 'cbc:ID')).toBe(paper.number)
    const total = textAt(root, 'cac:LegalMonetaryTotal/cbc:TaxInclusiveAmount')
    expect(total).toBe((Math.abs(paper.totalMinor) / 100).toFixed(2))
    expect((await xml(paper)).text).toBe(text)
  }
})

it('is had of credit notes over a part of an invoice: of what was credited, and which invoice it corrects', async () => {
  const { invoice } = await invoicedRepair(shop)
  const credit = (lines: unknown) =>
    shop.act('accounts.credit', { invoiceId: invoice.id, lines, reason: 'Charged too much' })
  const some = await credit([{ line: 0, quantity: '2.5', amount: null }])
  const sum = await credit([
    { line: 0, quantity: null, amount: '30.00' },
    { line: 1, quantity: null, amount: '6.40' },
  ])
  const rest = await credit(null)
  const totals = []
  for (const note of [some, sum, rest]) {
    const { status, text } = await xml(note)
    expect(status, note.number).toBe(200)
    expect(brokenRules(text), note.number).toEqual([])
    const { name, root } = parsedUbl(text)
    expect([name, textAt(root, 'cbc:CreditNoteTypeCode')]).toEqual(['CreditNote', '381'])
    const reference = root['cac:BillingReference'][0]['cac:InvoiceDocumentReference'][0]
    expect(textAt(reference, 'cbc:ID')).toBe(invoice.number)
    totals.push(Number(textAt(root, 'cac:LegalMonetaryTotal/cbc:TaxInclusiveAmount')?.replace('.', '')))
    expect(totals.at(-1)).toBe(-note.totalMinor)
  }
  expect(totals.reduce((all, one) => all + one, 0)).toBe(invoice.totalMinor)
  const units = parsedUbl((await xml(sum)).text).root['cac:CreditNoteLine'].map(
    // biome-ignore lint/suspicious/noExplicitAny: a parsed tree is walked by name
    (line: any) => line['cbc:CreditedQuantity'][0]['@unitCode'],
  )
  expect(units).toEqual(['C62', 'C62'])
})

it('is had of nothing else', async () => {
  const receipt = papers.find(({ kind }) => kind === 'receipt')
  expect(await xml(receipt ?? { id: 0 })).toMatchObject({
    status: 422,
    text: expect.stringContaining('eInvoice.notBilled'),
  })
  expect((await xml({ id: 99_999 })).status).toBe(404)
  expect((await shop.ask('/papers/0.xml')).status).toBeLessThan(500)
})

it('is turned on and off by a setting that a shop may be opened without', async () => {
  expect((await shop.view('shop')).settings.eInvoice).toEqual({ on: true })
  const { eInvoice, ...without } = testSettings
  expect(eInvoice).toEqual({ on: false })
  const { status } = await shop.tryAct('shop.changeSettings', { prices: without.prices })
  expect(status).toBe(200)
  expect((await shop.view('shop')).settings.eInvoice).toEqual({ on: true })
})
