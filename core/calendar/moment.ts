import { isLocalTime } from './local.ts'
import { type Instant, instantMs, instantOf } from './zone.ts'

const withSeconds = /^(.{16}):([0-5]\d)$/

/** The instant a person names: an ISO instant ending in Z, or a local time `YYYY-MM-DDTHH:MM` with or without `:SS`. Undefined when it is none. */
export function momentOf(text: string, timeZone: string): Instant | undefined {
  const ms = instantMs(text)
  if (ms !== undefined) return new Date(ms).toISOString()
  const [, minute = text, seconds = '0'] = withSeconds.exec(text) ?? []
  if (!isLocalTime(minute)) return undefined
  return new Date(Date.parse(instantOf(minute, timeZone)) + Number(seconds) * 1000).toISOString()
}

/** Whether `text` names a moment; the zone does not matter to that. */
export const isMoment = (text: string): boolean => momentOf(text, 'UTC') !== undefined
