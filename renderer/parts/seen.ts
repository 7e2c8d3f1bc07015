import { useEffect, useState } from 'react'
import type { ShownProblem } from '../api.ts'
import type { EntryState } from './entry.ts'

/** Some of a record's values, and which of them were changed by somebody else and not typed over here. */
function followed<T extends object>(typed: T, seen: T, now: T): Partial<T> {
  const keys = (Object.keys(now) as (keyof T)[]).filter(
    key => now[key] !== seen[key] && typed[key] === seen[key],
  )
  return Object.fromEntries(keys.map(key => [key, now[key]])) as Partial<T>
}

const differs = <T extends object>(a: T, b: T): boolean =>
  (Object.keys(a) as (keyof T)[]).some(key => a[key] !== b[key])

const changed: ReadonlySet<string> = new Set([
  'record.changedSince',
  'record.changedMeanwhile',
  'repair.dateChanged',
])

/**
 * What the person who changes something has seen of it: as it was when the form opened, and, once the ledger has refused because
 * somebody else changed it, as it is `now`. What comes in unasked meanwhile was not seen.
 */
export function useSeenAs<T>(now: T, problems: readonly ShownProblem[]): T {
  const [seen, setSeen] = useState(now)
  const told = problems.some(({ code }) => changed.has(code))
  useEffect(() => {
    if (told) setSeen(now)
  }, [told, now])
  return seen
}

/**
 * What of a record the person who changes it has seen: what it was when the form opened, and, once the ledger has refused
 * because somebody else changed it, what it is `now`. Fields that nobody typed over then follow the record.
 */
export function useSeen<T extends object>(
  entry: EntryState<T>,
  now: T,
  problems: readonly ShownProblem[],
): T {
  const [seen, setSeen] = useState(now)
  const told = problems.some(({ code }) => code === 'record.changedMeanwhile')
  useEffect(() => {
    if (!told || !differs(now, seen)) return
    entry.set(followed(entry.value, seen, now))
    setSeen(now)
  })
  return seen
}
