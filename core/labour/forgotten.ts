import { civilDateOf, type Instant } from '../calendar/zone.ts'
import type { LabourSpan } from './minutes.ts'

/** True for a labour clock that still runs on another day than it was started on: it must be asked about. */
export const isForgotten = (
  { startedAt, endedAt, struckReason }: LabourSpan,
  now: Instant,
  timeZone: string,
): boolean =>
  endedAt === null && struckReason === null && civilDateOf(startedAt, timeZone) !== civilDateOf(now, timeZone)
