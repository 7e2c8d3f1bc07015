import { sql } from 'drizzle-orm'
import { repairs } from '../schema/index.ts'

/** Repairs whose clock is in the shop, as `isInShop` of core has it. Spelled out, because SQLite uses the index of these repairs only for a condition that reads exactly like the index's own. */
export const inShop = sql`${repairs.stage} <> 'collected'`
