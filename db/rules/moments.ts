import { momentOf } from '../../core/calendar/moment.ts'
import type { PlainCode } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { refuse } from '../rows/refusal.ts'

/** The instant typed in `field`, on the shop's clocks unless it ends in Z; refuses one that lies after `now`. */
export function pastMoment(
  text: string,
  settings: Settings,
  now: string,
  field: string,
  future: PlainCode,
): string {
  const at = momentOf(text, settings.place.timeZone) ?? refuse('input.notATime', field)
  if (at > now) refuse(future, field)
  return at
}

/** Refuses an ending before its beginning: the computer's clock was put back, or stands wrong. */
export function refuseBackwards(from: string, to: string): void {
  if (to < from) refuse('clock.behind')
}
