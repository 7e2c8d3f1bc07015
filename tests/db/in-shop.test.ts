import { sql } from 'drizzle-orm'
import { expect, test } from 'vitest'
import { isInShop, type Stage, stages, stagesThat } from '../../core/standing/stages.ts'
import { inShop } from '../../db/rules/in-shop.ts'
import { openTestShop } from '../electron/handler-fixture.ts'

test('the database has the same repairs in the shop as core has, whatever their stage', async () => {
  const shop = await openTestShop()
  try {
    const rows = JSON.stringify(Object.keys(stages))
    const found = shop.ledger.read.all<{ stage: Stage }>(
      sql`WITH repairs AS (SELECT value AS stage FROM json_each(${rows})) SELECT stage FROM repairs WHERE ${inShop}`,
    )
    expect(found.map(({ stage }) => stage)).toEqual(stagesThat(isInShop))
  } finally {
    shop.close()
  }
})
