import { z } from 'zod'
import { isCivilDate } from '../../../core/calendar/civil.ts'
import { decimalOf } from '../../../core/decimal/decimal.ts'
import type { PlainCode } from '../../../core/problems.ts'

const control = /[\p{Cc}]/u

/** A refinement whose failure is the problem `code`. */
const as = (code: PlainCode) => ({ params: { code } })

const line = z
  .string()
  .trim()
  .refine(text => text.isWellFormed() && !control.test(text), as('input.invalid'))
const lines = z
  .string()
  .trim()
  .transform(text => text.replaceAll('\r\n', '\n'))
  .refine(text => text.isWellFormed() && !control.test(text.replace(/[\n\t]/g, '')), as('input.invalid'))

/** One line of text that must say something. */
export const required = (most = 200) => line.pipe(z.string().min(1).max(most))
/** One line of text that may be left empty. */
export const optional = (most = 200) => line.pipe(z.string().max(most)).default('')
/** Several lines that must say something. */
export const requiredLines = (most = 4000) => lines.pipe(z.string().min(1).max(most))
/** Several lines that may be left empty. */
export const optionalLines = (most = 4000) => lines.pipe(z.string().max(most)).default('')
/** The number of something in the ledger. */
export const id = z.int().positive()
/** The number of something in the ledger, as it stands in an address. */
export const number = z
  .string()
  .regex(/^[1-9]\d{0,15}$/)
  .transform(Number)
/** A whole count within bounds. */
export const count = (least: number, most: number) => z.int().min(least).max(most)
/** `YYYY-MM-DD`, a date that exists. */
export const civilDate = z.string().refine(isCivilDate, as('input.notADate'))
/** A date that may be left open. */
export const openDate = civilDate.nullable().default(null)
/** A plain decimal as text, without exponent or separators. */
export const decimal = z
  .string()
  .trim()
  .max(30)
  .refine(text => decimalOf(text) !== undefined, as('input.notADecimal'))
/** An amount in major units as text. */
export const amount = decimal
/** An amount that may be left open. */
export const openAmount = amount.nullable().default(null)
/** One of the codes of a vocabulary. */
export const oneOf = <const T extends readonly [string, ...string[]]>(codes: T) => z.enum(codes)
/** One of a registry's own keys. */
export const keyOf = <T extends Record<string, unknown>>(registry: T) =>
  z.enum(Object.keys(registry) as [keyof T & string, ...(keyof T & string)[]])
/** A length in whole millimetres, up to ten metres, that may be left open. */
export const openMm = count(1, 10_000).nullable().default(null)
/** A weight in whole grams, up to two tonnes, that may be left open. */
export const openGrams = count(1, 2_000_000).nullable().default(null)
/** A tick, off when left out. */
export const tick = z.boolean().default(false)
/** A problem of one's own on a field. */
export const saying = as
/** From `least` to `most` of the same; empty when left out, where nothing is needed. */
export const list = <T extends z.ZodType>(item: T, most: number, least = 0) =>
  z.array(item).min(least).max(most).readonly()
/** The stamp of a record as the writer has seen it (db/rows/seen.ts); null where nothing was seen, as in older day books. */
export const seenStamp = z
  .string()
  .regex(/^[0-9a-f]{16}$/)
  .nullable()
