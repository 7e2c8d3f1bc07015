import type { Problem } from '../problems.ts'
import type { Words } from './en/index.ts'

/** What is wrong and what to do, as a sentence in the catalogue's language. A code without a sentence is told by its code. */
export function problemText(words: Pick<Words, 'problems'>, { code, values }: Problem): string {
  const sentences: Readonly<Record<string, (values: Readonly<Record<string, string | number>>) => string>> =
    words.problems
  return sentences[code]?.(values ?? {}) ?? code
}
