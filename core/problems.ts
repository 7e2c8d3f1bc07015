/** One thing wrong with what was given: what (`code`), where (`field`, as a path such as `lines[0].quantity`), and the figures its sentence needs. */
export interface Problem {
  readonly code: string
  readonly field: string
  readonly values?: Readonly<Record<string, string | number>>
}

/** A result or everything that is wrong with the input: mistakes are data, never exceptions. */
export type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** A good result. */
export const good = <T>(value: T): Checked<T> => ({ ok: true, value })

/** Everything that is wrong with the input; never called with an empty list. */
export const bad = (problems: readonly Problem[]): { ok: false; problems: readonly Problem[] } => ({
  ok: false,
  problems,
})

/** The problems of something that stands at `path`; at the top where it is ''. */
export const problemsUnder = (path: string, problems: readonly Problem[]): Problem[] =>
  problems.map(one => ({ ...one, field: [path, one.field].filter(Boolean).join('.') }))

/** One problem. */
export const problem = (
  code: string,
  field: string,
  values?: Readonly<Record<string, string | number>>,
): Problem => (values ? { code, field, values } : { code, field })
