import { bad, type Checked, good, type Problem } from './problems.ts'

type Values<T> = { [K in keyof T]: T[K] extends Checked<infer V> ? V : never }

/** Everything in the record checked, or the problems of all of it together. */
export function gather<T extends Readonly<Record<string, Checked<unknown>>>>(parts: T): Checked<Values<T>> {
  const values: Record<string, unknown> = {}
  const problems: Problem[] = []
  for (const key in parts) {
    const part = parts[key]
    if (part?.ok) values[key] = part.value
    else for (const one of part?.problems ?? []) problems.push(one)
  }
  return unless(problems, () => values as Values<T>)
}

/** Everything in the list checked, or the problems of all of it together. */
export function gatherList<T>(parts: readonly Checked<T>[]): Checked<T[]> {
  const values: T[] = []
  const problems: Problem[] = []
  for (const part of parts)
    if (part.ok) values.push(part.value)
    else for (const one of part.problems) problems.push(one)
  return unless(problems, () => values)
}

/** The result of `next` on a good value; the problems otherwise. */
export const whenGood = <T, U>(checked: Checked<T>, next: (value: T) => Checked<U>): Checked<U> =>
  checked.ok ? next(checked.value) : checked

/** `value` when nothing is wrong; the problems, each named once, otherwise. */
export const unless = <T>(problems: readonly Problem[], value: () => T): Checked<T> =>
  problems.length > 0 ? bad(once(problems)) : good(value())

const once = (problems: readonly Problem[]): Problem[] => [
  ...new Map(problems.map(one => [`${one.code} ${one.field}`, one])).values(),
]
