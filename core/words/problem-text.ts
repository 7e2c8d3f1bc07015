import type { Problem } from '../problems.ts'
import type { sentences } from './en/sentences.ts'

/** What is wrong and what to do, as a sentence in the catalogue's language. */
export const problemText = (
  words: { readonly problems: typeof sentences },
  { code, values = {} }: Problem,
): string => (words.problems[code] as (values: NonNullable<Problem['values']>) => string)(values)
