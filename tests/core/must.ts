import type { Checked, Problem } from '../../core/problems.ts'

/** The good value, or a failure that names the problems. */
export function must<T>(checked: Checked<T>): T {
  if (checked.ok) return checked.value
  throw new Error(`refused: ${JSON.stringify(checked.problems)}`)
}

/** The problems as `code field`, sorted; none for a good value. */
export const refusals = (checked: Checked<unknown>): string[] => (checked.ok ? [] : named(checked.problems))

const named = (problems: readonly Problem[]): string[] =>
  problems.map(({ code, field }) => `${code} ${field}`).sort()
