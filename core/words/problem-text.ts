import type { Problem } from '../problems.ts'

type Sentence = (values: Readonly<Record<string, string | number>>) => string

/** What is wrong and what to do, as a sentence in the catalogue's language. A code without a sentence is told by its code. */
export function problemText(
  words: { readonly problems: Readonly<Record<string, Sentence>> },
  { code, values }: Problem,
): string {
  const sentence = Object.hasOwn(words.problems, code) ? words.problems[code] : undefined
  return sentence?.(values ?? {}) ?? code
}
