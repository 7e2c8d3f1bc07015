import type { Mutant } from './switched.ts'

/** A mutant and whether a test noticed it. */
export interface Judged {
  readonly mutant: Mutant
  readonly killed: boolean
  /** No test so much as passes there. */
  readonly unreached: boolean
}

const short = (text: string) => text.replace(/\s+/g, ' ').slice(0, 70)

const survivor = ({ mutant: { file, line, kind, from, to }, unreached }: Judged) =>
  `${file}:${line} ${kind}: ${short(from)} → ${short(to)}${unreached ? ' (no test reaches it)' : ''}`

const share = (all: readonly Judged[], of: string) => {
  const killed = all.filter(one => one.killed).length
  return `${((100 * killed) / all.length).toFixed(1)} % of ${all.length} ${of}`
}

/** The survivors in the order of the files, then the share noticed of each file and of all; nothing where there was no mutant. */
export function table(results: readonly Judged[]): string[] {
  const sorted = results.toSorted((a, b) => a.mutant.id - b.mutant.id)
  const byFile = Map.groupBy(sorted, ({ mutant }) => mutant.file)
  return [
    ...sorted.filter(({ killed }) => !killed).map(survivor),
    ...[...byFile].map(([file, all]) => share(all, file)),
    ...(sorted.length > 0 ? [share(sorted, 'in all')] : []),
  ]
}
