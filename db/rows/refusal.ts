import {
  type Figures,
  type PlainCode,
  type Problem,
  type ProblemCode,
  problem,
  type UnknownCode,
} from '../../core/problems.ts'

/** An act the shop's rules do not allow, with everything that stands against it. Nothing of the act is written. */
export class Refusal extends Error {
  readonly problems: readonly Problem[]

  constructor(problems: readonly Problem[]) {
    super(problems.map(p => p.code).join(', '))
    this.problems = problems
  }
}

/** Refuses with one problem. Codes ending in `.unknown` mean the thing named is not in the ledger. */
export function refuse(code: PlainCode, field?: string): never
export function refuse<C extends ProblemCode>(code: C, field: string, ...figures: Figures<C>): never
export function refuse<C extends ProblemCode>(code: C, field = '', ...figures: Figures<C>): never {
  throw new Refusal([problem(code, field, ...figures)])
}

/** Refuses when there is anything against it. */
export function refuseAny(problems: readonly Problem[]): void {
  if (problems.length > 0) throw new Refusal(problems)
}

/** The row, or a refusal that it is not in the ledger. */
export function known<T>(row: T | undefined, code: UnknownCode, field: string): T {
  return row ?? refuse(code, field)
}

/** Everything that stands against it in any of the checks: each refuses, or finds nothing wrong. */
export function refusalsOf(checks: readonly (() => unknown)[]): Problem[] {
  return checks.flatMap(check => {
    try {
      check()
      return []
    } catch (error) {
      if (error instanceof Refusal) return error.problems
      throw error
    }
  })
}
