import type { Mutant } from './switched.ts'

/** A mutant and whether a test noticed it. */
export interface Judged {
  readonly mutant: Mutant
  readonly killed: boolean
  /** No test so much as passes there. */
  readonly unreached: boolean
}

const short = (text: string) => text.replace(/\s+/g, ' ').slice(0, 70)

/** A survivor in one line: where it is, and what was changed into what. */
export const survivorLine = ({ mutant: { file, line, kind, from, to }, unreached }: Judged) =>
  `${file}:${line} ${kind}: ${short(from)} → ${short(to)}${unreached ? ' (no test reaches it)' : ''}`

const share = (all: readonly Judged[], of: string) => {
  const killed = all.filter(one => one.killed).length
  return `${((100 * killed) / all.length).toFixed(1)} % of ${all.length} ${of}`
}

/** The share noticed of each file and of all; nothing where there was no mutant. */
export function shares(results: readonly Judged[]): string[] {
  const byFile = Map.groupBy(results, ({ mutant }) => mutant.file)
  return [
    ...[...byFile].map(([file, all]) => share(all, file)),
    ...(results.length > 0 ? [share(results, 'in all')] : []),
  ]
}
