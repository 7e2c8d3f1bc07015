import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { en } from '../../core/words/en/index.ts'

const books = join(import.meta.dirname, '../../db/books')

/** The name of every act that a book can write. */
async function acts(): Promise<string[]> {
  const found: string[] = []
  for (const file of readdirSync(books)) {
    const book: Record<string, unknown> = await import(join(books, file))
    for (const one of Object.values(book))
      if (typeof one === 'function' && 'act' in one) found.push(String(one.act))
  }
  return found.sort()
}

test('every act of the books has its sentence for the day book, and no sentence is left without an act', async () => {
  expect(Object.keys(en.accounts.acts).sort()).toEqual(await acts())
})
