import type { sentences } from './words/en/sentences.ts'

/** Every problem there is: those that the catalogue has a sentence for. */
export type ProblemCode = keyof typeof sentences

/** A problem of something that is not in the ledger. */
export type UnknownCode = Extract<ProblemCode, `${string}.unknown`>

/** A problem whose sentence needs no figures. */
export type PlainCode = { [C in ProblemCode]: Figures<C> extends [] ? C : never }[ProblemCode]

/** What the sentence of a code needs, as arguments; of one of several codes, what each of them needs. */
export type Figures<C extends ProblemCode> = (
  C extends ProblemCode
    ? (figures: Parameters<(typeof sentences)[C]>) => void
    : never
) extends (figures: infer All extends readonly unknown[]) => void
  ? All
  : never

/** One thing wrong with what was given: what (`code`), where (`field`, as a path such as `lines[0].quantity`), and the figures its sentence needs. */
export interface Problem {
  readonly code: ProblemCode
  readonly field: string
  readonly values?: Readonly<Record<string, string | number>>
}

/** A result or everything that is wrong with the input: mistakes are data, never exceptions. */
export type Checked<T, P = Problem> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly P[] }

/** A good result. */
export const good = <T>(value: T): { ok: true; value: T } => ({ ok: true, value })

/** Everything that is wrong with the input; never called with an empty list. */
export const bad = <P = Problem>(problems: readonly P[]): { ok: false; problems: readonly P[] } => ({
  ok: false,
  problems,
})

/** What is wrong with it; nothing where it is good. */
export const problemsOf = (checked: Checked<unknown>): readonly Problem[] =>
  checked.ok ? [] : checked.problems

/** The problems of something that stands at `path`; at the top where it is ''. */
export const problemsUnder = (path: string, problems: readonly Problem[]): Problem[] =>
  problems.map(one => ({ ...one, field: [path, one.field].filter(Boolean).join('.') }))

/** One problem, with the figures its sentence needs. */
export function problem<C extends ProblemCode>(code: C, field: string, ...figures: Figures<C>): Problem {
  const values = figures[0] as Problem['values']
  return values ? { code, field, values } : { code, field }
}
