import { writeFileSync } from 'node:fs'
import { stripTypeScriptTypes } from 'node:module'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { temporaryFolder } from '../db/temporary-ledger.ts'
import { type Mutant, switched } from './switched.ts'

const source = `
const limit: number = 3
export function told(n: number, names?: { readonly first?: string }): string {
  const said: string[] = []
  if (n > limit) said.push('over')
  else if (n === limit) said.push('at')
  else said.push(names?.first ?? 'under')
  let more = n
  more += 1
  return [...said, more].join(' ')
}
`

const place = temporaryFolder()
let mutants: readonly Mutant[]
let text: string
beforeAll(() => {
  writeFileSync(join(place.folder, 'told.ts'), source)
  const found = switched(place.folder, 'told.ts', 100)
  mutants = found.mutants
  text = stripTypeScriptTypes(found.text).replace('export ', '')
})
afterAll(place.remove)

type Told = (n: number, names?: { first?: string }) => string

/** The function of the file with one mutant standing in it, or none. */
const withMutant = (on?: Mutant): Told =>
  new Function('$mutant', `${text}; return told`)((id: number) => id === on?.id)

const mutant = (kind: string, from: string, to: string) =>
  mutants.find(one => one.kind === kind && one.from === from && one.to === to)

describe('a file with its mutants in it', () => {
  it('means the same as long as none of them stands', () => {
    const told = withMutant()
    expect([told(4), told(3), told(2), told(2, { first: 'low' })]).toEqual([
      'over 5',
      'at 4',
      'under 3',
      'low 3',
    ])
  })

  it('changes in one place alone where one of them stands', () => {
    const boundary = withMutant(mutant('boundary', 'n > limit', 'n >= limit'))
    expect([boundary(4), boundary(3), boundary(2)]).toEqual(['over 5', 'over 4', 'under 3'])
    const arithmetic = withMutant(mutant('arithmetic', 'more += 1', 'more -= 1'))
    expect([arithmetic(4), arithmetic(2)]).toEqual(['over 3', 'under 1'])
    const left = withMutant(mutant('call left out', "said.push('at')", ''))
    expect([left(3), left(2)]).toEqual(['4', 'under 3'])
  })

  it('numbers them from the number given, names the line of each, and changes nothing into itself', () => {
    expect(mutants.map(({ id }) => id)).toEqual(mutants.map((_, at) => 100 + at))
    expect(mutant('number', '3', '3 + 1')?.line).toBe(2)
    expect(mutants.filter(({ from, to }) => from === to)).toEqual([])
  })

  it('breaks a chain as a whole', () => {
    const plain = withMutant(mutant('optional', 'names?.first', 'names.first'))
    expect(() => plain(2)).toThrow(TypeError)
    expect(plain(2, {})).toBe('under 3')
  })
})
