import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { problem } from '../../../core/problems.ts'
import { en } from '../../../core/words/en/index.ts'
import { problems } from '../../../core/words/en/problems.ts'
import { problemText } from '../../../core/words/problem-text.ts'

const sources = [
  'calendar',
  'decimal',
  'horology',
  'money',
  'pricing',
  'rate',
  'run-in',
  'statistics',
  'strike',
  'warranty',
]
  .map(folder => join('core', folder))
  .concat(join('electron', 'commands', 'calc'))

const text = sources
  .flatMap(folder =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map(name => join(folder, name)),
  )
  .filter(path => path.endsWith('.ts'))
  .map(path => readFileSync(path, 'utf8'))
  .concat(
    ['commands/calc.ts', 'server/holidays.ts'].map(name => readFileSync(join('electron', name), 'utf8')),
  )
  .join('\n')

const used = [
  ...new Set(
    [...text.matchAll(/problem\([^']*'([a-zA-Z]+\.[a-zA-Z]+)'(?: : '([a-zA-Z]+\.[a-zA-Z]+)')?/g)].flatMap(
      ([, ...codes]) => codes.filter(code => code !== undefined),
    ),
  ),
].sort()

test('every problem of the sums has a sentence, and every sentence a problem', () => {
  expect(used.length).toBeGreaterThan(60)
  expect(used.filter(code => !Object.hasOwn(en.problems, code))).toEqual([])
  expect(Object.keys(problems).filter(code => !used.includes(code))).toEqual([])
})

test('every sentence is a sentence', () => {
  for (const [code, sentence] of Object.entries(problems)) {
    const said = sentence({ text: 'x' })
    expect([code, said]).toEqual([code, expect.stringMatching(/^[“A-Z].*\.$/)])
  }
})

test('a code without a sentence is told by its code, also where objects have such a name', () => {
  expect(problemText({ problems }, problem('nowhere.found', ''))).toBe('nowhere.found')
  expect(problemText({ problems }, problem('toString', ''))).toBe('toString')
})
