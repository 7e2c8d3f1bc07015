import { expect, test } from 'vitest'
import { minor } from '../../../core/money/minor.ts'
import { type ComparedLine, comparedVersions } from '../../../core/pricing/compare.ts'

const line = (description: string, net: number, more: Partial<ComparedLine> = {}): ComparedLine => ({
  kind: 'labour',
  description,
  quantity: '1',
  unit: String(net / 100),
  net: minor(net),
  ...more,
})

const names = (lines: readonly ComparedLine[]) => lines.map(({ description }) => description)

test('a version against itself shows nothing, also in another order', () => {
  const lines = [line('Overhaul', 19_200), line('Bushings', 4800)]
  const { added, removed, changed, differenceMinor } = comparedVersions(lines, lines.toReversed())
  expect([added, removed, changed, differenceMinor]).toEqual([[], [], [], 0])
})

test('what is added, removed and changed is told apart, with the difference of the sums', () => {
  const before = [
    line('Overhaul', 19_200),
    line('Mainspring', 3640, { kind: 'part' }),
    line('Bushings', 4800),
  ]
  const after = [line('overhaul ', 24_000), line('Bushings', 4800), line('Chime hammers', 2400)]
  const { added, removed, changed, differenceMinor } = comparedVersions(before, after)
  expect(names(added)).toEqual(['Chime hammers'])
  expect(names(removed)).toEqual(['Mainspring'])
  expect(changed.map(({ before: b, after: a }) => [b.net, a.net])).toEqual([[19_200, 24_000]])
  expect(differenceMinor).toBe(24_000 + 4800 + 2400 - 19_200 - 3640 - 4800)
})

test('the same work in other words is a change, not one line for another', () => {
  const before = [line('Full overhaul', 19_200, { work: 'overhaul' })]
  const after = [line('Overhaul of both trains', 19_200, { work: 'overhaul' })]
  expect(comparedVersions(before, after)).toMatchObject({ added: [], removed: [], changed: [{}] })
})

test('equal lines are counted, so that a second one is added', () => {
  const bushing = line('Bushing', 1200)
  const { added, changed } = comparedVersions([bushing], [bushing, bushing])
  expect([added.length, changed.length]).toEqual([1, 0])
})

test('the same figures written otherwise are no change; a charge for rush work is one', () => {
  const before = [line('Overhaul', 19_200, { unit: '192' })]
  expect(comparedVersions(before, [line('Overhaul', 19_200, { unit: '192.00' })]).changed).toEqual([])
  expect(
    comparedVersions(before, [line('Overhaul', 24_000, { unit: '192', charge: '48' })]).changed,
  ).toHaveLength(1)
})

const changes = (before: readonly ComparedLine[], after: readonly ComparedLine[]) =>
  comparedVersions(before, after).changed.map(one => one.after.description)

test('two of something at half the price are a change, and so is another net at the same figures', () => {
  const two = line('Bushings', 4800, { quantity: '2', unit: '24' })
  expect(changes([two], [{ ...two, quantity: '1', unit: '48' }])).toEqual(['Bushings'])
  expect(changes([two], [{ ...two, net: minor(4000) }])).toEqual(['Bushings'])
})

test('lines without a code of work are paired by their words alone, and work only with work of its kind', () => {
  const before = [
    line('Bushings', 100),
    line('Pivots', 200),
    line('Call', 300, { kind: 'fee', work: 'repair' }),
  ]
  const after = [line('Hammers', 100), line('Repair', 300, { work: 'repair' })]
  const { added, removed, changed } = comparedVersions(before, after)
  expect([names(added), names(removed), changed]).toEqual([
    ['Hammers', 'Repair'],
    ['Bushings', 'Pivots', 'Call'],
    [],
  ])
})

test('one line is not both of another’s work and of another kind of work', () => {
  const before = [line('Overhaul', 100, { work: 'overhaul' })]
  expect(changes(before, [line('Service', 100, { work: 'service' })])).toEqual([])
})

test('changed lines stand in the order of the later version', () => {
  const before = [line('Pivots', 100), line('Full overhaul', 200, { work: 'overhaul' })]
  const after = [line('Overhaul', 200, { work: 'overhaul' }), line('Pivots', 300)]
  expect(changes(before, after)).toEqual(['Overhaul', 'Pivots'])
})
