import { sentences } from '../../core/words/en/sentences.ts'
import { start } from '../../core/words/en/start.ts'

interface Told {
  readonly code: string
  readonly field: string
  readonly message: string
}

const known = (code: string) => Object.hasOwn(sentences, code) || Object.hasOwn(start.refusals, code)

/** What is told to people never shows the program's inside: a code, or a figure that is not there. */
const isRaw = ({ code, message }: Told) =>
  message === code || message === '' || /undefined|NaN|\[object/.test(message)

/** Throws where an answer has a problem that people could not read: one without a sentence, or with a figure left out. */
export function mustBeSaid(answer: unknown): void {
  const problems = (answer as { problems?: unknown } | null)?.problems
  for (const one of Array.isArray(problems) ? (problems as Told[]) : [])
    if (!known(one.code) || isRaw(one)) throw new Error(`nobody can read this: ${JSON.stringify(one)}`)
}
