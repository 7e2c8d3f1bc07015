import { type Problem, problem } from '../../core/problems.ts'
import { refuseAny } from './refusal.ts'

type Value = string | number | boolean | null

/** Every value of `now` that is no longer what the writer has seen, told on its own field; nothing where all are. */
function changedSince<T extends Readonly<Record<string, Value>>>(seen: T, now: T): Problem[] {
  return Object.entries(seen).flatMap(([field, value]) => {
    const stands = now[field] ?? null
    return stands === value
      ? []
      : [problem('record.changedMeanwhile', field, { field, now: String(stands ?? '') })]
  })
}

/** Refuses to write over what somebody else changed since the writer saw it; where nobody says what was seen, nothing is asked. */
export function refuseUnseen<T extends object>(seen: T | undefined, now: T): void {
  if (seen) refuseAny(changedSince({ ...seen } as Record<string, Value>, { ...now } as Record<string, Value>))
}
