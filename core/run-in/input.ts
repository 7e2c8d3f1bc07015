import type { LocalTime } from '../calendar/local.ts'
import type { Opening } from '../calendar/work.ts'
import type { Duration } from '../vocabulary/clock.ts'
import type { RunInPolicy } from './policy.ts'

/** A clock set going on the shelf. */
export interface RunInInput extends Opening {
  readonly duration: Duration
  /** 1 to 3; every train is wound at each wind. */
  readonly trains: number
  readonly start: LocalTime
  readonly policy: RunInPolicy
}
