import { civilDateOf, type Instant } from '../calendar/zone.ts'

/** Something the plan asks for at a time. */
export interface Due {
  readonly id: number
  readonly kind: 'wind' | 'reading'
  readonly dueAt: Instant
}

/** What of the log can fulfil it. */
export interface Done {
  readonly at: Instant
  readonly wound: boolean
  /** Whether the hands were read, or the clock was found stopped. */
  readonly read: boolean
}

/** When each due was done, by its id, null while it is open: by the first reading of its day or a later one, a wind by the first that wound. */
export function duesDone(
  dues: readonly Due[],
  log: readonly Done[],
  timeZone: string,
): ReadonlyMap<number, Instant | null> {
  const readings = log.map(one => ({ ...one, on: civilDateOf(one.at, timeZone) }))
  return new Map(
    dues.map(({ id, kind, dueAt }) => {
      const on = civilDateOf(dueAt, timeZone)
      const done = readings.find(one => one.on >= on && (kind === 'reading' ? one.read : one.wound))
      return [id, done?.at ?? null]
    }),
  )
}
