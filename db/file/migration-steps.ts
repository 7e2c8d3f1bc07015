import type Database from 'better-sqlite3'
import { commitmentTo, firstHash, rowHash, saltBytes } from './chain.ts'
import { hexOf } from './identity.ts'
import type { Outside } from './outside.ts'

/** What of a migration SQL alone cannot do, by its number; run after its SQL, in the same transaction. */
export const migrationSteps: Readonly<
  Record<number, (db: Database.Database, random: Outside['random']) => void>
> = { 10: chainAnew }

interface RowOfBefore {
  readonly id: number
  readonly at: string
  readonly personId: number | null
  readonly act: string
  readonly subjectKind: string
  readonly subjectId: number
  readonly input: string
  readonly hash: string
}

/** Chains the rows of before by their commitments, and keeps beside each what it was chained by. */
function chainAnew(db: Database.Database, random: Outside['random']): void {
  const rows = db.prepare<[number], RowOfBefore>(`
    SELECT id, at, person_id AS personId, act, subject_kind AS subjectKind, subject_id AS subjectId, input, hash
    FROM day_book_of_before WHERE id > ? ORDER BY id LIMIT 1000`)
  const insert = db.prepare(`
    INSERT INTO day_book (id, at, person_id, act, subject_kind, subject_id, commitment, salt, input, previous_hash, hash, former_hash)
    VALUES (@id, @at, @personId, @act, @subjectKind, @subjectId, @commitment, @salt, @input, @previousHash, @hash, @formerHash)`)
  let previousHash = firstHash
  const chain = ({ hash: formerHash, ...row }: RowOfBefore): void => {
    const salt = hexOf(random(saltBytes))
    const link = { ...row, version: 1, key: null, previousHash, commitment: commitmentTo(salt, row.input) }
    const hash = rowHash(link)
    insert.run({ ...link, salt, hash, formerHash })
    previousHash = hash
  }
  for (let page = rows.all(0); page.length > 0; page = rows.all(page.at(-1)?.id ?? 0)) page.forEach(chain)
  db.exec('DROP TABLE day_book_of_before')
}
