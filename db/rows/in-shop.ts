import { sql } from 'drizzle-orm'
import { repairs } from '../schema/index.ts'

/** Repairs whose clock is still in the shop; said literally, as the index of these few lines answers only to that. */
export const inShop = sql`${repairs.stage} <> 'collected'`
