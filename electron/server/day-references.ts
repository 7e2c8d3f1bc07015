/** What the labelled acts made. */
export type Results = ReadonlyMap<string, Record<string, unknown>>

const partOf = (whole: unknown, key: string): unknown =>
  typeof whole === 'object' && whole !== null ? Reflect.get(whole, key) : undefined

/** `@label` is the id of what that act made, `@label.field` another part of its result, `@label.list.0.id` one deeper in it; `@@` begins a text with one @. */
export function resolved(value: unknown, results: Results): unknown {
  if (Array.isArray(value)) return value.map(item => resolved(item, results))
  if (value !== null && typeof value === 'object')
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, resolved(item, results)]))
  if (typeof value !== 'string' || !value.startsWith('@')) return value
  if (value.startsWith('@@')) return value.slice(1)
  const [label = '', ...path] = value.slice(1).split('.')
  const result = (path.length > 0 ? path : ['id']).reduce(partOf, results.get(label))
  if (result === undefined) throw new Error(`nothing is labelled ${value}`)
  return result
}

/** A literal text as it is written in a day file, so that it is never taken for a reference. */
export const asLiteral = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(asLiteral)
  if (value !== null && typeof value === 'object')
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, asLiteral(item)]))
  return typeof value === 'string' && value.startsWith('@') ? `@${value}` : value
}
