import { integer, text } from 'drizzle-orm/sqlite-core'
import type { Minor } from '../../core/money/minor.ts'

/** A row's own number. */
export const id = () => integer().primaryKey()

/** Text that may be empty but is never absent. */
export const words = () => text().notNull().default('')

/** One of the codes of a vocabulary. */
export const code = <T extends string>() => text().$type<T>().notNull()

/** Yes or no, kept as 1 or 0. */
export const flag = () => integer({ mode: 'boolean' }).notNull().default(false)

/** Money in integer minor units. */
export const amount = () => integer().$type<Minor>()

/** A value kept as JSON. */
export const json = <T>() => text({ mode: 'json' }).$type<T>()
