import { zValidator } from '@hono/zod-validator'
import type { Context } from 'hono'
import { z } from 'zod'
import type { Problem } from '../../../core/problems.ts'
import { Refusal } from '../../../db/rows/refusal.ts'
import { inputProblems, refuseInput } from '../problems.ts'
import type { Env } from './perform.ts'

/** The checked JSON body of an act; everything wrong with it at once. */
export const body = <T extends z.ZodType>(schema: T) => zValidator('json', schema, refuseInput)

/** The checked query of a view. */
export const query = <T extends z.ZodType>(schema: T) => zValidator('query', schema, refuseInput)

/** A value as far as it could be read; lists are there whole or not at all. */
type Partly<T> = T extends readonly unknown[]
  ? T
  : T extends object
    ? { readonly [K in keyof T]?: Partly<T[K]> }
    : T

/** What of `given` the schema can read: objects field by field, of a choice of objects the one that most can be read of. */
function whatReads(schema: z.core.$ZodType, given: unknown): unknown {
  const parsed = z.safeParse(schema, given)
  if (parsed.success) return parsed.data
  if (schema instanceof z.ZodUnion)
    return schema.options
      .map(option => whatReads(option, given))
      .filter(read => read !== undefined)
      .toSorted((a, b) => Object.keys(Object(b)).length - Object.keys(Object(a)).length)[0]
  if (!(schema instanceof z.ZodObject) || typeof given !== 'object' || given === null) return undefined
  const fields = Object.entries(schema.shape as Record<string, z.core.$ZodType>)
  const read = fields.map(([key, field]) => [key, whatReads(field, Reflect.get(given, key))] as const)
  return Object.fromEntries(read.filter(([, value]) => value !== undefined))
}

/**
 * The checked JSON body of an act that a person types much into: where it cannot be read whole, what the book has against the rest
 * is told along with it.
 */
export const bodyAnd = <T extends z.ZodType>(
  schema: T,
  against: (given: Env['Variables'], said: Partly<z.output<T>>) => readonly Problem[],
) =>
  zValidator('json', schema, (result, c): void => {
    if (result.success || !result.error) return
    const said = whatReads(schema, result.data) as Partly<z.output<T>> | undefined
    throw new Refusal([
      ...inputProblems(result.error, result.data),
      ...(said === undefined ? [] : against((c as Context<Env>).var, said)),
    ])
  })
