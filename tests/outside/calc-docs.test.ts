import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { calculations } from '../../electron/commands/calc/index.ts'
import { answer, calc } from './calc.ts'

const page = readFileSync('docs/calc.md', 'utf8')

/** The JSON blocks under each heading. */
const sections = new Map(
  page.split(/^## /m).map(section => {
    const [heading = ''] = section.split('\n')
    const blocks = [...section.matchAll(/```json\n([\s\S]*?)```/g)].map(
      ([, json = '']) => JSON.parse(json) as unknown,
    )
    return [heading.replaceAll('`', ''), blocks] as const
  }),
)

/** Numbers to twelve figures: the last digits of sines and roots differ from machine to machine. */
const rounded = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value), (_key, inner: unknown) =>
    typeof inner === 'number' ? Number(inner.toPrecision(12)) : inner,
  )

test.each(Object.keys(calculations))('the example of %s gives what docs/calc.md says', name => {
  const [input, output] = sections.get(name) ?? []
  expect(output).toBeDefined()
  expect(rounded(answer(name, input))).toEqual(rounded(output))
})

test('the refusal in docs/calc.md is what is said', () => {
  const [input, output] = sections.get('What is refused') ?? []
  const { status, stdout, stderr } = calc('allocate', JSON.stringify(input))
  expect([status, stdout, JSON.parse(stderr)]).toEqual([2, '', output])
})
