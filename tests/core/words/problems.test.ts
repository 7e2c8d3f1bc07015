import { expect, test } from 'vitest'
import { problem } from '../../../core/problems.ts'
import { en } from '../../../core/words/en/index.ts'
import { sentences } from '../../../core/words/en/sentences.ts'
import { problemText } from '../../../core/words/problem-text.ts'
import { sourcesBelow } from '../../rooms/files.ts'
import { type Node, nodesOf } from '../../rooms/source.ts'

/** The texts a file names: those that stand there whole, and what those made up of parts begin with. */
function textsOf(program: unknown): { whole: string[]; begun: string[] } {
  const whole: string[] = []
  const begun: string[] = []
  for (const [node] of nodesOf(program as Node)) {
    if (node.type === 'Literal' && typeof node.value === 'string') whole.push(node.value)
    const [quasi] = node.type === 'TemplateLiteral' ? (node.quasis as { value: { cooked: string } }[]) : []
    if (quasi && /^\w+\.$/.test(quasi.value.cooked)) begun.push(quasi.value.cooked)
  }
  return { whole, begun }
}

const texts = sourcesBelow('.')
  .filter(({ path }) => !path.startsWith('core/words/en/'))
  .map(({ program }) => textsOf(program))
const whole = new Set(texts.flatMap(one => one.whole))
const begun = [...new Set(texts.flatMap(one => one.begun))]

test('every sentence has a problem in the source that it belongs to', () => {
  const unused = Object.keys(sentences).filter(
    code => !whole.has(code) && !begun.some(start => code.startsWith(start)),
  )
  expect(unused).toEqual([])
})

test('no code stands in two parts of the catalogue, where one sentence would hide the other', async () => {
  const parts = await Promise.all([
    import('../../../core/words/en/problems.ts').then(part => part.problems),
    import('../../../core/words/en/refusals.ts').then(part => part.refusals),
    import('../../../core/words/en/meanwhile.ts').then(part => part.meanwhile),
    import('../../../core/words/en/e-invoice.ts').then(part => part.eInvoiceProblems),
  ])
  expect(parts.flatMap(part => Object.keys(part)).sort()).toEqual(Object.keys(sentences).sort())
})

/** Something for every figure a sentence may ask for. */
const anything: object = new Proxy(
  {},
  { get: (_, name) => ({ kind: 'invoice', size: 'a4', cause: 'misuse' })[String(name)] ?? 'X' },
)

test('every sentence is a sentence', () => {
  for (const [code, sentence] of Object.entries(sentences)) {
    const said = (sentence as (values: object) => string)(anything)
    expect([code, said]).toEqual([code, expect.stringMatching(/^[“A-Z].*\.$/s)])
    expect(said).not.toMatch(/undefined|\[object/)
  }
})

test('a problem says its sentence with its figures', () => {
  const twice = problem('price.taxTwice', 'taxes[1]', { tax: 'VAT' })
  expect(twice).toEqual({ code: 'price.taxTwice', field: 'taxes[1]', values: { tax: 'VAT' } })
  expect(problemText(en, twice)).toBe('The tax VAT is on this line twice at one rate.')
  expect(problem('fit.tooFew', 'x')).toEqual({ code: 'fit.tooFew', field: 'x' })
})

/** Read by the compiler, which must refuse each line; what it does not refuse, it reports. */
const refused = [
  // @ts-expect-error no sentence has this code
  () => problem('nowhere.found', ''),
  // @ts-expect-error the sentence names the tax
  () => problem('price.taxTwice', 'taxes[1]'),
  // @ts-expect-error by this name, and no other
  () => problem('price.taxTwice', 'taxes[1]', { code: 'VAT' }),
  // @ts-expect-error a sentence without figures is given none
  () => problem('fit.tooFew', 'x', { least: 2 }),
  // @ts-expect-error figures are wrong for one of the two
  (either: 'fit.tooFew' | 'price.taxTwice') => problem(either, 'x', { tax: 'VAT' }),
  // @ts-expect-error one of the codes made up here has no sentence
  (caution: 'jewels' | 'silvered-dial') => problem(`refused.${caution}`, ''),
]

test('the compiler refuses a code without a sentence, and figures that are not its sentence’s', () => {
  expect(refused).toHaveLength(6)
})
