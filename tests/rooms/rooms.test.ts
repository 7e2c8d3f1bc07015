import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { breachesOf } from './breaches.ts'
import { sourcesBelow } from './files.ts'

let root: string
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'countwheel-rooms-'))
  for (const folder of ['core', 'db', 'electron', 'renderer']) mkdirSync(join(root, folder))
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

/** What is wrong where these files stand, as `rule what`. */
function breaches(files: Readonly<Record<string, string>>): string[] {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, path)), { recursive: true })
    writeFileSync(join(root, path), text)
  }
  return breachesOf(sourcesBelow(root)).map(({ rule, what }) => `${rule} ${what}`)
}

describe('the rooms of the program', () => {
  it('are kept by the program itself', () => {
    expect(breachesOf(sourcesBelow(join(import.meta.dirname, '../..')))).toEqual([])
  })

  it.each([
    ['core from db', 'core/a.ts', "import { b } from '../db/rows/b.ts'", 'room db/rows/b.ts'],
    ['rows from rules', 'db/rows/a.ts', "export * from '../rules/b.ts'", 'room db/rules/b.ts'],
    [
      'rules from what a page shows',
      'db/rules/a.ts',
      "import { b } from '../read/b.ts'",
      'room db/read/b.ts',
    ],
    ['read from books', 'db/read/a.ts', "import { b } from '../books/b.ts'", 'room db/books/b.ts'],
    [
      'db from electron, if only a type',
      'db/books/a.ts',
      "let a: import('../../electron/server/b.ts').B",
      'room electron/server/b.ts',
    ],
    [
      'server from the desktop',
      'electron/server/a.ts',
      "import '../desktop/b.ts'",
      'room electron/desktop/b.ts',
    ],
    [
      'the renderer from db',
      'renderer/a.ts',
      "const b = await import('../db/rows/b.ts')",
      'room db/rows/b.ts',
    ],
    [
      'the API by value',
      'renderer/a.ts',
      "import { api } from '../electron/server/api.ts'",
      'room electron/server/api.ts',
    ],
  ])('%s: an import upwards is told', (_, path, text, told) => {
    const target = told.split(' ')[1] ?? ''
    expect(breaches({ [target]: 'export const b = 1', [path]: text })).toEqual([told])
  })

  it('lets pages have the API’s types', () => {
    const text = "import type { Api } from '../electron/server/api.ts'"
    expect(breaches({ 'electron/server/api.ts': 'export type Api = 1', 'renderer/a.ts': text })).toEqual([])
  })

  it.each([
    ['core/a.ts', 'node:fs'],
    ['core/a.ts', 'lodash'],
    ['db/rules/a.ts', 'better-sqlite3'],
    ['electron/server/a.ts', 'electron'],
    ['electron/papers/a.ts', 'drizzle-orm'],
    ['renderer/a.ts', 'node:path'],
  ])('%s may not have the package %s, not even a type of it', (path, name) => {
    expect(breaches({ [path]: `import type { x } from '${name}'` })).toEqual([`package ${name}`])
  })

  it('no page imports another, but those that belong to several', () => {
    const page = { 'renderer/bench/b.ts': 'export const b = 1', 'renderer/repair/b.ts': 'export const b = 1' }
    expect(breaches({ ...page, 'renderer/stores/a.ts': "import '../bench/b.ts'" })).toEqual([
      'page renderer/bench/b.ts',
    ])
    expect(breaches({ 'renderer/stores/a.ts': "import '../repair/b.ts'" })).toEqual([])
  })

  it('no files import one another in a ring, types included', () => {
    const ring = { 'core/a.ts': "import type { B } from './b.ts'", 'core/b.ts': "import { a } from './a.ts'" }
    expect(breaches(ring)).toEqual(['cycle core/a.ts → core/b.ts → core/a.ts'])
  })
})

describe('core', () => {
  it.each([
    ['Date.now()', 'Date.now'],
    ['new Date()', 'new Date()'],
    ['Math.random()', 'Math.random'],
    ['process.env.HOME', 'process'],
    ["'a'.localeCompare('b')", 'localeCompare'],
  ])('does not say %s', (text, what) => {
    expect(breaches({ 'core/a.ts': `export const a = ${text}` })).toContain(`purity ${what}`)
  })

  it('may make a date of what it is given, and compare in a language that it is given', () => {
    const text = "export const a = [new Date(0), 'a'.localeCompare('b', 'en')]"
    expect(breaches({ 'core/a.ts': text })).toEqual([])
  })
})
