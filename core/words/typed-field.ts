import { fields } from './en/fields.ts'

/** `chimeCorrects` as `chime corrects`. */
const split = (name: string): string => name.replace(/[A-Z]/g, capital => ` ${capital.toLowerCase()}`)

/** One part of a path in words: a field's name, or its place in a list counted from one. */
const part = (name: string): string =>
  /^\d+$/.test(name) ? String(Number(name) + 1) : (fields[name] ?? split(name))

/** The path of a field, such as `lines[0].quantity`, in the shop's words. */
export const fieldText = (path: string): string =>
  path
    .split(/[.[\]]+/)
    .filter(Boolean)
    .map(part)
    .join(', ')
