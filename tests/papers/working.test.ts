import { describe, expect, test, vi } from 'vitest'
import { minor } from '../../core/money/minor.ts'
import { paperSizes, sizesOf } from '../../core/papers/sizes.ts'
import type { AnyContents, WorkingContents } from '../../core/papers/working.ts'
import { en } from '../../core/words/en/index.ts'
import { formats } from '../../core/words/format.ts'
import { jpeg, png, webp } from './pictures.ts'
import {
  codesOf,
  fontsOf,
  infoOf,
  lettersOf,
  operatorsOf,
  overlapping,
  pagesOf,
  printed,
  structureOf,
  textOf,
  wordsOf,
} from './reading.ts'
import { textsIn, typed } from './said.ts'
import { claimCheck, invoice, receipt } from './samples.ts'
import {
  benchCard,
  conditionReport,
  everyWorkingPaper,
  fortnight,
  goAhead,
  goAheadSupplement,
  handOver,
  readyLetter,
  runIn,
  runInOf,
  statement,
  tags,
  uncollectedLetter,
} from './working-samples.ts'

// Other programs read the papers here: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 30_000 })

const each = everyWorkingPaper.map((contents, i) => [`${contents.kind} ${i}`, contents] as const)

/** Money under the names working papers give it. */
const money = ['amount', 'balance', 'billed', 'paid', 'due', 'toPay', 'most', 'net']
const amountsOf = (value: unknown, key = ''): number[] => {
  if (typeof value === 'number') return money.includes(key) ? [value] : []
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([inner, part]) => amountsOf(part, inner))
}

/** How near to the edge words may stand on each size, in points. */
const edge = { a4: 41, letter: 41, a6: 16, label62x29: 5, label4x6: 13 } as const

function expectInside(pdf: Buffer, size: keyof typeof edge): void {
  const { width, height } = paperSizes[size]
  for (const { text, left, right, top, bottom } of wordsOf(pdf)) {
    expect(left, text).toBeGreaterThanOrEqual(edge[size])
    expect(right, text).toBeLessThanOrEqual(width - edge[size])
    expect(top, text).toBeGreaterThanOrEqual(0)
    expect(bottom, text).toBeLessThanOrEqual(height - 3)
  }
}

describe.each(each)('%s', (_, contents) => {
  test('prints every text that somebody typed and every amount', async () => {
    const pdf = await printed(contents)
    const letters = lettersOf(pdf).toLowerCase()
    const { owner, shop, ...said } = contents
    const onLabel = contents.kind === 'tags'
    const withoutHead = onLabel || contents.kind === 'bench-card'
    const phone = withoutHead || contents.kind.endsWith('letter') ? [] : [owner.phone ?? '']
    const texts = [
      // The clock's further marks stand on its card, not on its tag.
      ...textsIn(
        said,
        typed.filter(key => !(onLabel && key === 'marks')),
      ),
      owner.name,
      ...phone,
      ...(withoutHead ? [] : textsIn(shop, typed)),
    ]
    for (const text of texts) expect(letters).toContain(text.replace(/\s+/g, '').toLowerCase())
    const write = formats(contents)
    for (const amount of amountsOf(said).filter(amount => amount !== 0))
      expect(textOf(pdf)).toContain(write.amount(minor(Math.abs(amount))))
  })

  test('is tagged, carries its title, and embeds every font', async () => {
    const pdf = await printed(contents)
    expect(infoOf(pdf)).toMatchObject({ Tagged: 'yes', Author: contents.shop.name })
    expect(infoOf(pdf).Title).not.toBe('')
    const structure = structureOf(pdf)
    expect(structure.startsWith('Document')).toBe(true)
    expect(structure).toContain(contents.owner.name)
    const fonts = fontsOf(pdf)
    expect(fonts.length).toBeGreaterThan(1)
    expect(fonts.filter(font => !font.embedded)).toEqual([])
  })

  test('carries the day it was drawn, unless it is a label', async () => {
    const text = textOf(await printed(contents))
    if (contents.kind !== 'tags') expect(text).toMatch(/4 (Mar|March) 2027/)
  })

  test('is the same to the byte twice, also with other papers printed between', async () => {
    const first = await printed(contents)
    await printed({ ...invoice, notes: 'A\u00a0wide\u00a0space, µ and μ, חנוך, محمد' })
    expect((await printed(contents)).equals(first)).toBe(true)
  })

  test('comes on each of its sizes, every word inside the page and none over another', async () => {
    for (const size of sizesOf[contents.kind]) {
      const pdf = await printed(contents, size)
      const { width, height } = paperSizes[size]
      expect(infoOf(pdf)['Page size']).toContain(`${width} x ${height} pts`)
      expectInside(pdf, size)
      expect(overlapping(pdf)).toEqual([])
    }
  })

  test('keeps Łódź, ß, € and a name written from right to left', async () => {
    const owner = { ...contents.owner, name: 'Łódź Straße € רחל' }
    const letters = lettersOf(await printed({ ...contents, owner } as WorkingContents)).replace(
      /\p{Cf}/gu,
      '',
    )
    for (const word of ['Łódź', 'Straße', '€', 'רחל']) expect(letters).toContain(word)
  })
})

describe('sizes', () => {
  test('a paper asked for on a size it does not come on is refused, not squeezed', async () => {
    await expect(printed(runIn, 'label62x29')).rejects.toThrow(RangeError)
    await expect(printed(invoice, 'a6')).rejects.toThrow(RangeError)
    await expect(printed(tags, 'a4')).rejects.toThrow(RangeError)
  })

  test('a claim check on A6 is the owner’s part alone, on one page, with its code', async () => {
    const pdf = await printed(claimCheck, 'a6')
    expect(infoOf(pdf)).toMatchObject({ Pages: '1', 'Page size': '297.64 x 419.53 pts' })
    expect(codesOf(pdf)).toEqual([claimCheck.qr])
    const text = textOf(pdf)
    expect(text).toContain('Keep this part')
    expect(text).not.toContain(claimCheck.fault)
    expectInside(pdf, 'a6')
    expect(overlapping(pdf)).toEqual([])
  })

  test('a receipt on A6 stands on one page with all it says', async () => {
    const pdf = await printed(receipt, 'a6')
    expect(infoOf(pdf).Pages).toBe('1')
    expect(textOf(pdf)).toContain('Received £100.00')
    expectInside(pdf, 'a6')
    expect(overlapping(pdf)).toEqual([])
  })

  test('a receipt and a claim check on A6 go on over further pages where the text is long', async () => {
    const marks = Array.from({ length: 200 }, (_, i) => `mark${i}`).join(' ')
    const clock = { form: 'bracket' as const, marks }
    for (const contents of [claimCheck, receipt] as const) {
      const pdf = await printed({ ...contents, clock } as AnyContents, 'a6')
      expect([...textOf(pdf).matchAll(/mark\d+/g)]).toHaveLength(200)
      expectInside(pdf, 'a6')
      expect(overlapping(pdf)).toEqual([])
    }
  })
})

describe('tags', () => {
  test.each(['label62x29', 'label4x6'] as const)(
    'on %s are a page each, the clock first, every one with its number and a code that reads',
    async size => {
      const pdf = await printed(tags, size)
      const pages = pagesOf(pdf)
      expect(pages).toHaveLength(4)
      expect(pages[0]).toContain('Bracket clock')
      expect(pages[1]).toContain('2231-A')
      expect(pages[1]).toContain('Winding key')
      expect(pages[3]).toContain('Finial left')
      for (const page of [1, 2, 3, 4]) expect(codesOf(pdf, page)).toEqual(['countwheel:2231'])
    },
  )

  test('two hundred parts are two hundred tags and one for the clock', async () => {
    const parts = Array.from({ length: 200 }, (_, i) => ({
      part: { item: 'other' as const, description: `Chain link ${i + 1}`, count: 1, tag: `2231-${i + 1}` },
    }))
    const pages = pagesOf(await printed({ ...tags, tags: [{}, ...parts] }))
    expect(pages).toHaveLength(201)
    pages.slice(1).forEach((page, i) => {
      expect(page).toContain(`2231-${i + 1} `)
      expect(page).toContain(`Chain link ${i + 1}`)
    })
  })

  test('a long name or description is set smaller, then goes on over the next label: nothing is lost', async () => {
    const owner = { ...tags.owner, name: 'Maximiliane Freifrau von und zu Obernitz-Sallowmere-Thornbury' }
    const description = Array.from({ length: 40 }, (_, i) => `piece${i}`).join(' ')
    const part = { item: 'other' as const, description, count: 3, tag: '2231-Q' }
    for (const size of sizesOf.tags) {
      const pdf = await printed({ ...tags, owner, tags: [{ part }] }, size)
      expect(lettersOf(pdf)).toContain(owner.name.replace(/\s/g, ''))
      expect([...textOf(pdf).matchAll(/piece\d+/gi)]).toHaveLength(40)
      expectInside(pdf, size)
      expect(overlapping(pdf)).toEqual([])
      for (const page of pagesOf(pdf)) expect(page).toContain('2231-Q')
    }
  })

  test('a tag of the shop’s own writing keeps the repair’s number before it', async () => {
    const part = { item: 'key' as const, count: 1, tag: 'blue 7' }
    expect(textOf(await printed({ ...tags, tags: [{ part }] }))).toContain('2231 · blue 7')
  })
})

describe('the condition report', () => {
  test('numbers its notes and draws each pin with the number of its note', async () => {
    const letters = lettersOf(await printed(conditionReport))
    expect(letters).toContain('1DialSilver-coloured,marked.Wornthroughatthefive,oldlacquercrazed.Dial,Front')
    expect(letters).toContain('2CaseWorn,glue.Liftingveneerattheleftfoot.Front')
    const pinned = operatorsOf(await printed(conditionReport))
    const bare = { ...conditionReport, notes: conditionReport.notes.map(note => ({ ...note, pins: [] })) }
    const curves = (all: readonly string[]) => all.filter(each => each === 'c').length
    // A disc is drawn of four curves.
    expect(curves(pinned) - curves(operatorsOf(await printed(bare)))).toBe(3 * 4)
  })

  const photograph = (hash: string, more = {}) => ({
    hash,
    moment: 'intake' as const,
    addedOn: '2027-03-03',
    ...more,
  })

  test('prints JPEG and PNG photographs and names those it cannot print', async () => {
    const bytes = new Map([
      ['a', jpeg],
      ['b', png],
      ['c', webp],
      ['d', Buffer.concat([png.subarray(0, 60)])],
    ])
    const photographs = [
      photograph('a', { note: 1, remark: 'The five' }),
      photograph('b'),
      photograph('c'),
      photograph('d'),
      photograph('e'),
    ]
    const pdf = await printed({ ...conditionReport, photographs }, 'a4', hash => bytes.get(hash))
    expect(pdf.toString('latin1').match(/\/Subtype \/Image/g)).toHaveLength(2)
    const text = textOf(pdf)
    expect(text).toContain('Photograph 1, at the counter, 3 Mar 2027 · note 1 · The five')
    for (const [number, hash] of [
      [3, 'c'],
      [4, 'd'],
      [5, 'e'],
    ] as const)
      expect(text).toContain(en.papers.condition.missing(number, hash))
    expect(structureOf(pdf)).toContain('Figure')
  })

  test('carries two hundred photographs and notes over many pages without losing one', async () => {
    const notes = Array.from({ length: 200 }, (_, i) => ({
      component: 'case' as const,
      grade: 'marked' as const,
      remark: `Scratch ${i + 1} of them`,
      notedOn: '2027-03-03',
      pins: [{ view: 'front' as const, x: (i % 20) / 20, y: i / 200 }],
    }))
    const photographs = Array.from({ length: 200 }, (_, i) => photograph(`${i}`))
    const pdf = await printed({ ...conditionReport, notes, photographs }, 'a4', () => jpeg)
    const text = textOf(pdf)
    expect([...text.matchAll(/Scratch (\d+) of them/g)].map(match => Number(match[1]))).toEqual(
      notes.map((_, i) => i + 1),
    )
    expect([...text.matchAll(/Photograph (\d+),/g)].map(match => Number(match[1]))).toEqual(
      photographs.map((_, i) => i + 1),
    )
  })
})

describe('the go-ahead form', () => {
  test('asks for the estimate’s own figures and leaves room to sign', async () => {
    const text = textOf(await printed(goAhead))
    expect(text).toContain('Go ahead as estimated, up to £920.00, tax included.')
    expect(text).toContain('1207 of 3 Mar 2027')
    expect(text).toContain('Do not go ahead')
    expect(text).toContain(en.papers.estimate.signGoAhead)
    expect(infoOf(await printed(goAheadSupplement)).Title).toBe('Go-ahead on supplement 1207-S1')
  })
})

describe('the bench card', () => {
  test('begins with the cautions, the sentence that local codes come first among them', async () => {
    const text = textOf(await printed(benchCard))
    const at = (words: string) => text.indexOf(words)
    expect(at('Cautions')).toBeGreaterThan(0)
    expect(at(en.papers.cautionsDefer)).toBeGreaterThan(at('Cautions'))
    expect(at(en.papers.cautionsDefer)).toBeLessThan(at('Fault as told'))
    expect(at('Fault as told')).toBeLessThan(at('Tasks'))
  })

  test('has a box to tick for each task and each thing the shop holds, and its code reads', async () => {
    const pdf = await printed(benchCard)
    expect(codesOf(pdf)).toEqual(['countwheel:2231'])
    const more = { ...benchCard, steps: [...benchCard.steps, { code: 'oil' as const, cautions: [] }] }
    const boxes = (all: readonly string[]) => all.filter(each => each === 're').length
    expect(boxes(operatorsOf(await printed(more))) - boxes(operatorsOf(pdf))).toBe(1)
    expect(textOf(pdf)).toContain('tag 2231-C')
    expect(textOf(pdf)).not.toContain('finial right')
  })

  test('lists two hundred belongings', async () => {
    const belongings = Array.from({ length: 200 }, (_, i) => ({
      item: 'other' as const,
      description: `Chain link ${i + 1}`,
      count: 1,
      custody: 'received' as const,
      tag: `2231-${i + 1}`,
    }))
    const pdf = await printed({ ...benchCard, belongings })
    expect([...textOf(pdf).matchAll(/Chain link (\d+) \(tag/g)].map(match => Number(match[1]))).toEqual(
      belongings.map((_, i) => i + 1),
    )
    expect(overlapping(pdf)).toEqual([])
  })
})

describe('the run-in certificate', () => {
  test('shows verdict, rate, and every reading of the chart in a table', async () => {
    const text = textOf(await printed(runIn))
    expect(text).toContain('Passed on 18 Mar 2027, decided by Ines Marrow')
    expect(text).toContain('nut 0.5')
    for (const { errorSeconds } of fortnight)
      expect(text).toContain(formats(runIn).signedSeconds(Math.round((errorSeconds ?? 0) * 10) / 10))
    // The reading at which it was touched closes the first stretch as found and opens the second as left.
    expect(text.split('\n').filter(line => line.includes('+12.4 s')).length).toBeGreaterThan(0)
    expect(text).toContain('put into its case')
    expect(text).toContain('Hours: 1: right on')
  })

  test('draws a dot for every reading and a line for each wind', async () => {
    const curves = (all: readonly string[]) => all.filter(each => each === 'c').length
    const all = operatorsOf(await printed(runIn))
    const fewer = operatorsOf(await printed(runInOf(fortnight.slice(0, -1))))
    expect(curves(all) - curves(fewer)).toBe(4)
  })

  test('is a record, not a certificate, until the clock has passed', async () => {
    const { outcome: _, endedAt: __, decidedBy: ___, ...open } = runIn
    const pdf = await printed(open)
    expect(infoOf(pdf).Title).toBe('Run-in record 2231')
    expect(textOf(pdf)).toContain('nothing has been decided')
    expect(infoOf(await printed({ ...runIn, outcome: 'to-bench', reason: 'Stopped twice' })).Title).toBe(
      'Run-in record 2231',
    )
  })

  test('says that nothing was read where there are no readings', async () => {
    const text = textOf(await printed(runInOf([])))
    expect(text).toContain(en.papers.runIn.nothingRead)
  })

  test('a year of daily readings keeps every one of them', async () => {
    const year = Array.from({ length: 365 }, (_, day) => ({
      at: new Date(Date.parse('2027-03-04T09:00:00.000Z') + day * 86_400_000).toISOString(),
      errorSeconds: day * 0.7,
      wound: day % 7 === 0,
      nutTurns: day % 30 === 29 ? 0.25 : 0,
    }))
    const pdf = await printed(runInOf(year))
    expect(overlapping(pdf)).toEqual([])
    expect(textOf(pdf)).toContain('2 Mar 2028, 09:00')
    expect(pagesOf(pdf).length).toBeGreaterThan(8)
  })
})

describe('letters', () => {
  test('the ready letter says what to pay and when the shop is open, days with the same hours together', async () => {
    const text = textOf(await printed(readyLetter))
    expect(text).toContain('There is £715.82 to pay')
    expect(text).toContain('Monday, Tuesday 09:00–12:30, 13:00–17:00')
    expect(text).toContain('Saturday 09:00–12:00')
    expect(text).not.toContain('Wednesday')
  })

  test('money that the shop holds is told as the owner’s', async () => {
    const text = textOf(await printed({ ...readyLetter, toPay: minor(-2500) }))
    expect(text).toContain('We hold £25.00 of yours')
    expect(textOf(await printed({ ...readyLetter, toPay: minor(0) }))).toContain('nothing to pay')
  })

  test('the letter on an uncollected clock gives no advice on law above the cut, and prompts the shop below it', async () => {
    const pdf = await printed(uncollectedLetter)
    const text = textOf(pdf)
    const [letter = '', slip = ''] = text.split(en.papers.uncollected.cut)
    expect(letter).toContain('94 days by now')
    expect(letter.toLowerCase()).not.toMatch(/\blaw\b|\bact\b|sold|lien/)
    expect(slip).toContain('Look up what your local law asks')
    expect(slip).toContain('not advice')
    for (const size of sizesOf['uncollected-letter'])
      expect(pagesOf(await printed(uncollectedLetter, size))).toHaveLength(1)
  })
})

describe('the hand-over receipt', () => {
  test('says what went back, what did not and why, to whom, and how to set the clock up', async () => {
    const text = textOf(await printed(handOver))
    expect(text).toContain('Aurel Pell, 4 Mar 2027')
    expect(text).toContain('not given back: kept here for gluing')
    expect(text).toContain('Left to pay £715.82')
    expect(text).toContain(en.setUpAdvice.beat)
    expect(text).toContain('certificate W0088')
  })

  test('ticks the boxes of what went back and leaves the others open', async () => {
    const ticks = async (contents: WorkingContents) =>
      operatorsOf(await printed(contents)).filter(each => each === 'l').length
    const allBack = {
      ...handOver,
      belongings: handOver.belongings.map(({ reason: _, ...thing }) => ({ ...thing, returned: true })),
    }
    const noneBack = {
      ...handOver,
      belongings: allBack.belongings.map(thing => ({ ...thing, returned: false })),
    }
    // A tick is two strokes.
    expect((await ticks(allBack)) - (await ticks(noneBack))).toBe(2 * handOver.belongings.length)
  })

  test('before the hand-over it is a form, without sums while nothing is billed', async () => {
    const { handedOver: _, warranty: __, ...form } = handOver
    const pdf = await printed({ ...form, billed: minor(0), paid: minor(0), due: minor(0) })
    expect(infoOf(pdf).Title).toBe('Hand-over 2231')
    expect(textOf(pdf)).not.toContain('Left to pay')
  })
})

describe('the statement', () => {
  test('carries the balance on from row to row', async () => {
    const text = textOf(await printed(statement))
    expect(text).toContain('Invoice I1043 2231 815.82 715.82')
    expect(text).toContain('Payment, receipt R0519, bank transfer 2231 700.00 −30.26')
    expect(text).toContain('To pay £0.00')
  })

  test('repeats its head on each page and keeps two hundred entries in order', async () => {
    const rows = Array.from({ length: 200 }, (_, i) => ({
      on: '2027-01-10',
      entry: 'invoice' as const,
      number: `I${String(i + 1).padStart(4, '0')}`,
      amount: minor(100),
      balance: minor((i + 1) * 100),
    }))
    const balance = minor(20_000)
    const pdf = await printed({ ...statement, rows, billed: balance, paid: minor(0), balance })
    const pages = pagesOf(pdf)
    expect(pages.length).toBeGreaterThan(3)
    for (const page of pages) if (page.includes('Invoice I')) expect(page).toContain('Date Entry Repair')
    expect([...textOf(pdf).matchAll(/Invoice I(\d+)/g)].map(match => Number(match[1]))).toEqual(
      rows.map((_, i) => i + 1),
    )
    expect(overlapping(pdf)).toEqual([])
  })

  test('says so where there is nothing yet', async () => {
    const nothing = { ...statement, rows: [], billed: minor(0), paid: minor(0), balance: minor(0) }
    expect(textOf(await printed(nothing))).toContain(en.papers.statement.empty)
  })
})
