import { type Minor, minor } from '../money/minor.ts'
import type { LineWork } from '../vocabulary/work.ts'
import { type LineFigures, sameFigures } from './book-line.ts'
import type { LineKind } from './kinds/index.ts'

/** A line of a version, as it is compared with another. */
export interface ComparedLine extends Omit<LineFigures, 'charge'> {
  readonly kind: LineKind
  readonly description: string
  readonly charge?: string | undefined
  readonly work?: LineWork | undefined
  readonly net: Minor
}

/** What one version of an estimate has against the one before it. */
export interface Compared<Line> {
  readonly added: readonly Line[]
  readonly removed: readonly Line[]
  /** The same work or goods at other figures or in other words. */
  readonly changed: readonly { readonly before: Line; readonly after: Line }[]
  /** Sum of the lines after − before, without tax. */
  readonly differenceMinor: Minor
}

const words = ({ kind, description }: ComparedLine) => `${kind} ${description.trim().toLowerCase()}`
const asWork = ({ kind, work }: ComparedLine) => work && `${kind} ${work}`

/** Pairs each line after with the first line before of the same key that has no pair yet; taken lines leave both lists. */
function pair<Line>(before: Line[], after: Line[], key: (line: Line) => string | undefined) {
  const pairs: { before: Line; after: Line }[] = []
  for (const line of [...after]) {
    const same = key(line)
    const at = same === undefined ? -1 : before.findIndex(earlier => key(earlier) === same)
    const [earlier] = at < 0 ? [] : before.splice(at, 1)
    if (earlier === undefined) continue
    after.splice(after.indexOf(line), 1)
    pairs.push({ before: earlier, after: line })
  }
  return pairs
}

const same = (a: ComparedLine, b: ComparedLine): boolean =>
  words(a) === words(b) &&
  sameFigures({ ...a, charge: a.charge ?? '0' }, { ...b, charge: b.charge ?? '0' }) &&
  a.net === b.net

/**
 * What was added, removed and changed from one version to the next. Lines belong together by kind and words, and those
 * left over by kind and the code of their work; their order does not matter.
 */
export function comparedVersions<Line extends ComparedLine>(
  before: readonly Line[],
  after: readonly Line[],
): Compared<Line> {
  const removed = [...before]
  const added = [...after]
  const pairs = [...pair(removed, added, words), ...pair(removed, added, asWork)]
  const sum = (lines: readonly Line[]) => lines.reduce((total, { net }) => total + net, 0)
  return {
    added,
    removed,
    changed: pairs
      .filter(one => !same(one.before, one.after))
      .toSorted((a, b) => after.indexOf(a.after) - after.indexOf(b.after)),
    differenceMinor: minor(sum(after) - sum(before)),
  }
}
