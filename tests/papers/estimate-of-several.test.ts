import { expect, test, vi } from 'vitest'
import { minor } from '../../core/money/minor.ts'
import type { EstimateContents, EstimateSection } from '../../core/papers/contents.ts'
import { pricedTogether } from '../../core/pricing/together.ts'
import { en } from '../../core/words/en/index.ts'
import { formats } from '../../core/words/format.ts'
import { must } from '../core/must.ts'
import { infoOf, printed, structureOf, textOf } from './reading.ts'
import { amountsIn, textsIn, typed } from './said.ts'
import { head, moneyOf, workLines } from './samples.ts'

// Other programs read the papers here: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 30_000 })

const { clock: bracket, repairNumber: _, ...top } = head

const section = (from: number, to: number, more: Partial<EstimateSection>): EstimateSection => {
  const { lines, priced } = moneyOf(workLines.slice(from, to))
  return { repairNumber: '2231', supplement: false, lines, priced, cautions: [], ...more }
}

const sections: readonly EstimateSection[] = [
  section(0, 3, {
    ...(bracket ? { clock: bracket } : {}),
    range: { low: minor(54_780), high: minor(61_000) },
    cautions: ['silvered-dial'],
  }),
  section(1, 4, {
    repairNumber: '2232',
    clock: { form: 'carriage', maker: 'Aubin, Harwick', trains: 1, duration: '8-day' },
    estimatedOn: '2027-05-28',
  }),
]

const several: EstimateContents = {
  ...top,
  ...moneyOf([]),
  kind: 'estimate',
  number: '2231/1',
  version: 1,
  supplement: false,
  sections,
  lines: sections.flatMap(({ lines }) => lines),
  priced: must(pricedTogether(sections.map(({ priced }) => priced))),
  validUntil: '2027-04-03',
  limit: { overrunPercent: '10', overrun: minor(5000) },
  cautions: [],
}

const { kind: __, number, ...said } = several
const word = { ...said, kind: 'go-ahead', estimate: { number, issuedOn: '2027-03-03' } } as const

test('an estimate on several clocks names each with its lines and its total, then what all come to', async () => {
  const pdf = await printed(several)
  const text = textOf(pdf)
  const letters = text.replace(/\s+/g, '')
  const write = formats(several)
  for (const amount of amountsIn(several).filter(each => each !== 0))
    expect(text).toContain(write.amount(minor(amount)))
  for (const each of textsIn(several, typed)) expect(letters).toContain(each.replace(/\s+/g, ''))
  for (const { repairNumber, priced } of sections)
    expect(text).toContain(`Repair ${repairNumber} ${write.money(priced.taxInclusive)}`)
  expect(text).toContain(`${en.papers.estimate.together} ${write.money(several.priced.taxInclusive)}`)
  expect(text.indexOf('J. Aubin'.slice(3))).toBeGreaterThan(text.indexOf('Jno. Everquill'))
  expect(structureOf(pdf).match(/^\s*H1/gm)).toHaveLength(1)
  expect(infoOf(pdf).Title).toBe('Estimate 2231/1')
})

test('the form for the owner’s word asks for each clock by itself, at its own upper end', async () => {
  const text = textOf(await printed(word))
  const write = formats(several)
  for (const { repairNumber, priced, range } of sections) {
    expect(text).toContain(en.papers.goAhead.chooseOn(repairNumber))
    expect(text).toContain(en.papers.goAhead.yes(write.money(range?.high ?? priced.taxInclusive)))
  }
  expect(text.match(new RegExp(en.papers.goAhead.no.slice(0, 14), 'g'))).toHaveLength(2)
  expect(text).toContain(en.papers.goAhead.returnAll)
})
