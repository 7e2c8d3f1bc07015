import { type Problem, problem } from '../../../core/problems.ts'

/**
 * Reads one JSON value at the path `field` strictly and writes down what is wrong. It always returns a value of the
 * right shape, a harmless one where the given one is of the wrong shape, so that everything else can still be
 * looked at.
 */
export type Shape<T> = (raw: unknown, field: string, problems: Problem[]) => T

const mostInList = 100_000

function leaf<T>(expected: string, standIn: T, read: (raw: unknown) => T | undefined): Shape<T> {
  return (raw, field, problems) => {
    const value = read(raw)
    if (value !== undefined) return value
    problems.push(
      raw === undefined ? problem('shape.missing', field) : problem('shape.wrongType', field, { expected }),
    )
    return standIn
  }
}

/** A text whose meaning the core checks; `standIn` is a good one. */
export const text = (standIn: string): Shape<string> =>
  leaf('text in quotation marks', standIn, raw => (typeof raw === 'string' ? raw : undefined))

/** A JSON number. */
export const number: Shape<number> = leaf('a number', 1, raw => (typeof raw === 'number' ? raw : undefined))

/** true or false. */
export const yesNo: Shape<boolean> = leaf('true or false', false, raw =>
  typeof raw === 'boolean' ? raw : undefined,
)

/** A decimal text, or a JSON number that is written without an exponent: quantities are no money. */
export const quantity: Shape<string> = leaf('a decimal, as text or number', '1', raw =>
  typeof raw === 'string' ? raw : typeof raw === 'number' ? String(raw) : undefined,
)

/** One of a few texts. */
export const choice =
  <T extends string>(...choices: readonly [T, ...T[]]): Shape<T> =>
  (raw, field, problems) => {
    const found = choices.find(one => one === raw)
    if (found !== undefined) return found
    const [first] = choices
    problems.push(
      raw === undefined
        ? problem('shape.missing', field)
        : problem('shape.notOneOf', field, { choices: choices.join(', ') }),
    )
    return first
  }

/** What may be left out. */
export const optional =
  <T>(shape: Shape<T>): Shape<T | undefined> =>
  (raw, field, problems) =>
    raw === undefined ? undefined : shape(raw, field, problems)

/** A list, every entry of one shape. */
export const list =
  <T>(shape: Shape<T>): Shape<readonly T[]> =>
  (raw, field, problems) => {
    const entries = leaf<readonly unknown[]>('a list', [], given =>
      Array.isArray(given) ? given : undefined,
    )
    const given = entries(raw, field, problems)
    if (given.length > mostInList) problems.push(problem('shape.tooMany', field, { most: mostInList }))
    return given.slice(0, mostInList).map((entry, i) => shape(entry, `${field}[${i}]`, problems))
  }

/** An object with these fields and no others. */
export const record =
  <T extends object>(fields: { readonly [K in keyof T]-?: Shape<T[K]> }): Shape<T> =>
  (raw, field, problems) => {
    const objects = leaf<object>('an object', {}, given => (isObject(given) ? given : undefined))
    const given = objects(raw, field, problems)
    const path = (key: string) => (field === '' ? key : `${field}.${key}`)
    for (const name of Object.keys(given))
      if (!Object.hasOwn(fields, name)) problems.push(problem('shape.unknownField', path(name), { name }))
    // An object of the wrong shape is one problem, not one for each of its fields.
    const inner = isObject(raw) ? problems : []
    const values = (Object.keys(fields) as (keyof T & string)[]).map(name => {
      const value = Object.hasOwn(given, name) ? (given as Record<string, unknown>)[name] : undefined
      return [name, fields[name](value, path(name), inner)] as const
    })
    return Object.fromEntries(values.filter(([, value]) => value !== undefined)) as T
  }

const isObject = (raw: unknown): raw is object =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw)
