import { describe, expect, test, vi } from 'vitest'
import type { PaperContents } from '../../core/papers/contents.ts'
import { priced } from '../../core/pricing/price.ts'
import { en } from '../../core/words/en/index.ts'
import { formats, majorText } from '../../core/words/format.ts'
import { codesOf, fontsOf, infoOf, pagesOf, printed, structureOf, textOf, wordsOf } from './reading.ts'
import { amountsIn, textsIn, typed } from './said.ts'
import { claimCheck, estimate, everyPaper, invoice, receipt, supplement, warranty } from './samples.ts'

// Other programs read the papers here: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 30_000 })

const name = (contents: PaperContents) => `${contents.kind} ${contents.number}`
const each = everyPaper.map(contents => [name(contents), contents] as const)

describe.each(each)('%s', (_, contents) => {
  test('prints every amount that it carries', async () => {
    const text = textOf(await printed(contents))
    // Steps that change nothing are left out: nothing allowed, charged, rounded or paid.
    const amounts = amountsIn(contents).filter(amount => amount !== 0)
    const write = formats(contents)
    for (const amount of amounts)
      expect(text).toContain(write.amount(amount as typeof receipt.amount).replace('−', ''))
  })

  test('prints every text that somebody typed', async () => {
    const letters = textOf(await printed(contents)).replace(/\s+/g, '')
    for (const text of textsIn(contents, typed)) expect(letters).toContain(text.replace(/\s+/g, ''))
  })

  test('says date, owner and shop, and its title as the document’s title', async () => {
    const pdf = await printed(contents)
    expect(textOf(pdf)).toContain('4 Mar 2027')
    expect(infoOf(pdf).Title).toMatch(new RegExp(` ${contents.number}$`))
    expect(infoOf(pdf).Author).toBe(contents.shop.name)
  })

  test('is tagged, with a document, one heading and no text outside the tree but running lines', async () => {
    const pdf = await printed(contents)
    const structure = structureOf(pdf)
    expect(infoOf(pdf).Tagged).toBe('yes')
    expect(structure.startsWith('Document')).toBe(true)
    const headings = structure.split('\n').filter(line => /^\s*H1/.test(line))
    expect(headings).toHaveLength(contents.kind === 'claim-check' ? 2 : 1)
    expect(structure).toContain(contents.owner.name)
  })

  test('embeds every font', async () => {
    const fonts = fontsOf(await printed(contents))
    expect(fonts.length).toBeGreaterThan(1)
    expect(fonts.filter(font => !font.embedded)).toEqual([])
  })

  test('is the same to the byte twice, also with other papers printed between', async () => {
    const first = await printed(contents)
    await printed({ ...invoice, notes: 'A\u00a0wide\u00a0space, µ and μ, חנוך, محمد' })
    expect((await printed(contents)).equals(first)).toBe(true)
  })

  // ISO 216 A4 is 210 × 297 mm, US Letter 8.5 × 11 in (ANSI/ASME Y14.1).
  test('comes on A4 and on Letter, all its words inside the page', async () => {
    for (const [size, label, width, height] of [
      ['a4', '595.28 x 841.89 pts (A4)', 595.28, 841.89],
      ['letter', '612 x 792 pts (letter)', 612, 792],
    ] as const) {
      const pdf = await printed(contents, size)
      expect(infoOf(pdf)['Page size']).toBe(label)
      for (const word of wordsOf(pdf)) {
        expect(word.left, word.text).toBeGreaterThanOrEqual(41)
        expect(word.right, word.text).toBeLessThanOrEqual(width - 41)
        expect(word.bottom, word.text).toBeLessThanOrEqual(height - 20)
      }
    }
  })

  test('fits one page, in at most 80 kB', async () => {
    for (const size of ['a4', 'letter'] as const) {
      const pdf = await printed(contents, size)
      expect(infoOf(pdf).Pages).toBe(size === 'letter' && contents === estimate ? '2' : '1')
      expect(pdf.length).toBeLessThanOrEqual(80 * 1024)
    }
  })
})

describe('the claim check', () => {
  test('carries its code on both parts, and a reader finds what was put in', async () => {
    for (const size of ['a4', 'letter'] as const)
      expect(codesOf(await printed(claimCheck, size))).toEqual([claimCheck.qr, claimCheck.qr])
  })

  test('carries a long address in its code as well', async () => {
    const qr = 'https://tallowreed.example/claim/2231?key=0123456789abcdef0123456789abcdef'
    expect(codesOf(await printed({ ...claimCheck, qr }))).toEqual([qr, qr])
  })

  test('speaks of an estimated date, never of a promise', async () => {
    const text = textOf(await printed(claimCheck))
    expect(text.match(/Estimated date 21 May 2027/g)).toHaveLength(2)
    expect(text.toLowerCase()).not.toContain('promise')
  })

  test('tells the belongings received, kept and absent apart, on both parts', async () => {
    const text = textOf(await printed(claimCheck))
    expect(
      text.match(
        /Received: winding key \(tag 2231-A\), pendulum \(tag 2231-B\), finial left \(tag 2231-C\)/g,
      ),
    ).toHaveLength(2)
    expect(text.match(/Kept by owner: case key ×2/g)).toHaveLength(2)
    expect(text.match(/Did not come with it: finial right/g)).toHaveLength(2)
  })

  test('keeps the owner’s part whole at the foot of a later page when the shop’s part is long', async () => {
    const condition = Array.from({ length: 50 }, (_, i) => ({
      component: 'case' as const,
      remark: `Scratch ${i + 1} of the old ones`,
    }))
    const pages = pagesOf(await printed({ ...claimCheck, condition }))
    expect(pages).toHaveLength(2)
    expect(pages.join(' ')).toContain('Scratch 50 of the old ones')
    expect(pages[1]).toContain('Keep this part')
    expect(pages[1]).toContain('Bracket clock')
  })
})

describe('cautions', () => {
  test.each([claimCheck, estimate])(
    'stand on the $kind with the sentence that local codes come first',
    async contents => {
      const text = textOf(await printed(contents))
      expect(text).toContain('Silvered dial: leave it or have it re-silvered, never clean it.')
      expect(text).toContain(en.papers.cautionsDefer)
    },
  )
})

describe('the estimate', () => {
  test('shows the working of its lines, its range and how far the shop may go', async () => {
    const text = textOf(await printed(estimate))
    expect(text).toContain(en.workingSteps.hoursAtRate({ hours: '5.5', rate: '62.00' }))
    expect(text).toContain('£780.00 to £920.00')
    expect(text).toContain('at most 10% and at most £50.00')
    expect(text).toContain('Valid until 3 Apr 2027')
  })

  test('tells its owner neither what a part cost the shop, nor what it adds, nor what it supposed', async () => {
    const working = [
      { code: 'trainsSupposed', values: { trains: 2 } },
      { code: 'bookHours', values: { hours: '4' } },
      { code: 'furtherHours', values: { hours: '1' } },
      { code: 'markup', values: { cost: '22.00', percent: '60' } },
      { code: 'storesPrice', values: { price: '35.20' } },
      { code: 'outsideMarkup', values: { cost: '60.00', percent: '20' } },
      { code: 'rush', values: { percent: '25', added: '10.00' } },
    ]
    const text = textOf(
      await printed({ ...estimate, lines: estimate.lines.map(line => ({ ...line, working })) }),
    )
    const said = working.map(({ code, values }) => en.workingSteps[code as 'markup'](values as never))
    expect(said.filter(step => text.includes(step))).toEqual([said.at(-1)])
  })

  test('is titled a supplement when it adds to what was agreed', async () => {
    expect(infoOf(await printed(supplement)).Title).toBe('Supplement 1207-S1')
  })

  test('prints a step of working that the catalogue no longer has by its code and values', async () => {
    const [line] = estimate.lines
    if (!line) throw new Error('the sample has lines')
    const old = { ...line, working: [{ code: 'stepOfLongAgo', values: { wheels: 4 } }] }
    expect(textOf(await printed({ ...estimate, lines: [old, ...estimate.lines.slice(1)] }))).toContain(
      'stepOfLongAgo 4',
    )
  })
})

describe('money papers', () => {
  test('frozen contents price to the same figures again after years in the ledger', () => {
    for (const contents of [estimate, supplement, invoice]) {
      const frozen: typeof contents = JSON.parse(JSON.stringify(contents))
      const { lines, currency, tax, priced: said } = frozen
      const again = priced({ currency, tax, lines, paid: majorText(said.paid, 2) })
      expect(again).toEqual({ ok: true, value: said })
    }
  })

  test('an invoice shows what was paid and what is left', async () => {
    const text = textOf(await printed(invoice))
    expect(text).toContain('Total £769.68')
    expect(text).toContain('Card, 4 Mar 2027, receipt 512 100.00')
    expect(text).toContain('To pay £669.68')
  })

  test('figures of a column end at the same place', async () => {
    const words = wordsOf(await printed(invoice))
    const nets = invoice.lines.map(line => formats(invoice).amount(line.net))
    const rights = nets.map(net =>
      Math.max(...words.filter(word => word.text === net).map(word => word.right)),
    )
    expect(Math.max(...rights) - Math.min(...rights)).toBeLessThan(0.05)
  })

  test('a refund says that money was given back', async () => {
    const refund = { ...receipt, amount: -receipt.amount as typeof receipt.amount, balance: receipt.amount }
    const text = textOf(await printed(refund))
    expect(text).toContain('Refund 512')
    expect(text).toContain('Refunded −£100.00')
  })
})

test('a warranty certificate names first and last day, what it leaves out and how to set the clock up', async () => {
  const text = textOf(await printed(warranty))
  expect(text).toContain('4 June 2027')
  expect(text).toContain('3 June 2028')
  expect(text).toContain('Mainsprings, and the damage a breaking spring does')
  expect(text).toContain(en.setUpAdvice.beat)
})
