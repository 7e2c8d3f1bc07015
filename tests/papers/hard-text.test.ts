import { describe, expect, test, vi } from 'vitest'
import { lettersOf, overlapping, pagesOf, printed, structureOf, textOf, wordsOf } from './reading.ts'
import { claimCheck, invoice, longInvoice, moneyOf, warranty } from './samples.ts'

// Other programs read long papers here: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 30_000 })

const ownedBy = (name: string) => ({ ...invoice, owner: { ...invoice.owner, name } })

describe('two hundred lines', () => {
  const long = longInvoice(200)

  test.each(['a4', 'letter'] as const)(
    'run over pages of %s with the head of the table and the count of pages on each',
    async size => {
      const pages = pagesOf(await printed(long, size))
      expect(pages.length).toBeGreaterThan(4)
      pages.forEach((page, i) => {
        if (page.includes('Bushing')) expect(page).toContain('Work and goods Quantity Unit price Tax Net')
        expect(page).toContain(`page ${i + 1} of ${pages.length}`)
        if (i > 0) expect(page.startsWith('Invoice 1043, continued')).toBe(true)
      })
    },
  )

  test('are all there, in order, none printed over another', async () => {
    const pdf = await printed(long)
    const numbers = [...textOf(pdf).matchAll(/Bushing (\d+), bronze/g)].map(match => Number(match[1]))
    expect(numbers).toEqual(Array.from({ length: 200 }, (_, i) => i + 1))
    expect(overlapping(pdf)).toEqual([])
  })

  // Sixty lines already run over several pages; pdfinfo takes many seconds to walk the tree of two hundred.
  test('are one table for a reader, its head said once', async () => {
    const pdf = await printed(longInvoice(60))
    const structure = structureOf(pdf)
    expect(pagesOf(pdf).length).toBeGreaterThan(1)
    expect(structure.match(/^\s*Table/gm)).toHaveLength(1)
    expect(structure.match(/"Work and goods ?"/g)).toHaveLength(1)
    expect(structure.match(/^\s*TR/gm)).toHaveLength(61)
  })

  test('keep the totals together with the last line', async () => {
    const last = pagesOf(await printed(long)).at(-1)
    expect(last).toContain('Bushing 200')
    expect(last).toContain('Sum of lines 20,110.00')
    expect(last).toContain('To pay')
  })
})

describe('letters', () => {
  test.each([
    'Łódź',
    'Straße ß ẞ',
    '€ 12, ₹ ₺ ₽ ₴',
    'Dvořák Ňuška Őrség',
    'Nguyễn Thị Ṩarma',
    'Αθήνα Ωμέγα',
    'Москва Їжак',
  ])('%s is kept', async name => {
    expect(lettersOf(await printed(ownedBy(name))).normalize('NFC')).toContain(
      name.replace(/\s/g, '').normalize('NFC'),
    )
  })

  // pdftotext wraps right-to-left words in marks of direction; the letters between them are what counts.
  test.each(['רחל', 'כהן', 'محمد', 'الخياط', 'فاطمة'])(
    '%s, written from right to left, is kept in reading order',
    async name => {
      expect(lettersOf(await printed(ownedBy(name)))).toContain(name)
    },
  )

  test('letters of two directions keep their neighbours', async () => {
    const letters = lettersOf(await printed(ownedBy('Anna דוד Berg'))).replace(/\p{Cf}/gu, '')
    expect(letters).toContain('AnnaדודBerg')
  })

  test('a letter that no face has prints as a box and is kept in the text layer', async () => {
    expect(lettersOf(await printed(ownedBy('漢字 ☃ 👍🏽')))).toContain('漢字☃👍🏽')
  })

  test('marks in a combination that a face cannot place do not stop the paper', async () => {
    const name = 'ب\u0303\u031d Ω\u0300\u0311 q\u0323\u0307\u0303'
    expect(lettersOf(await printed(ownedBy(name)))).toContain('Owner')
  })
})

describe('long text', () => {
  test('a word longer than its place is broken and keeps every letter', async () => {
    const word = 'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft'.repeat(3)
    const money = moneyOf([{ kind: 'labour', description: word, quantity: '1', unit: '10', taxes: [] }])
    const pdf = await printed({ ...invoice, ...money, owner: { ...invoice.owner, name: word } })
    const letters = lettersOf(pdf)
    expect(letters.split(word)).toHaveLength(3)
    expect(overlapping(pdf)).toEqual([])
    for (const { right } of wordsOf(pdf)) expect(right).toBeLessThanOrEqual(595.28 - 41)
  })

  test('a text longer than a page goes on over the next pages', async () => {
    const fault = Array.from({ length: 1500 }, (_, i) => `word${i}`).join(' ')
    const pdf = await printed({ ...claimCheck, fault })
    expect(lettersOf(pdf)).toContain('word1499')
    expect([...textOf(pdf).matchAll(/word(\d+)/g)].map(match => Number(match[1]))).toEqual(
      Array.from({ length: 1500 }, (_, i) => i),
    )
    expect(overlapping(pdf)).toEqual([])
  })

  test('a description of a whole page stays in its row', async () => {
    const description = Array.from({ length: 900 }, (_, i) => `step${i}`).join(' ')
    const pdf = await printed({
      ...invoice,
      ...moneyOf([{ kind: 'labour', description, quantity: '1', unit: '10', taxes: [] }]),
    })
    expect([...textOf(pdf).matchAll(/step\d+/g)]).toHaveLength(900)
    expect(overlapping(pdf)).toEqual([])
  })

  test('a person’s own line ends are kept', async () => {
    const words = wordsOf(await printed({ ...invoice, notes: 'firstline\nsecondline' }))
    const [first, second] = ['firstline', 'secondline'].map(text => words.find(word => word.text === text))
    expect(second?.left).toBe(first?.left)
    expect(second?.top).toBeGreaterThan(first?.top ?? Number.POSITIVE_INFINITY)
  })

  test('very large amounts keep their column', async () => {
    const money = moneyOf(
      [
        {
          kind: 'part',
          description: 'A very dear part',
          quantity: '1',
          unit: '90071992547409',
          taxes: [{ code: 'S', rate: '0' }],
        },
      ],
      { currency: 'IDR' },
    )
    const pdf = await printed({ ...invoice, ...money, currency: 'IDR', payments: [] })
    expect(textOf(pdf)).toContain('90,071,992,547,409.00')
    expect(overlapping(pdf)).toEqual([])
  })

  test('a hundred sentences of work keep their dashes and their order', async () => {
    const work = Array.from({ length: 100 }, (_, i) => `Bushing number ${i + 1} fitted and reamed`)
    const text = textOf(await printed({ ...warranty, work }))
    expect([...text.matchAll(/Bushing number (\d+) fitted/g)].map(match => Number(match[1]))).toEqual(
      work.map((_, i) => i + 1),
    )
  })
})
