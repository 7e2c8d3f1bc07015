import { afterAll, beforeAll, expect, it } from 'vitest'
import { brokenRules, parsedUbl, textAt } from '../core/e-invoice/checker.ts'
import { billedShop } from './billed-shop.ts'
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
