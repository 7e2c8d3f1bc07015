import { dayMs, minuteMs } from '../calendar/units.ts'
import { decimalOf } from '../decimal/decimal.ts'
import { bad, type Checked, good, problem } from '../problems.ts'

const secondsOnly = /^(\d{1,7}(?:\.\d{1,3})?)$/
const minutesAndSeconds = /^(?:(\d{1,3}):)?(\d{1,5}):([0-5]\d(?:\.\d{1,3})?)$/
const dialTime = /^=\s*([01]?\d|2[0-3]):([0-5]\d)(?::([0-5]\d))?$/
const halfDayMs = dayMs / 2

/**
 * The milliseconds fast (+) or slow (−) that were typed: `-63` in seconds, `2:10` or `+0:02` in minutes and seconds, `+1:02:10` with
 * hours; no sign means fast. `=10:24` or `=10:24:30` is what the dial shows at that very moment: `localMs` then says the true
 * time, in milliseconds of the shop's day. Problem: `reading.notAnError`.
 */
export function typedError(text: string, field: string, localMs: number): Checked<number> {
  const ms = shownError(text.trim(), localMs) ?? signedError(text.trim())
  return ms === undefined ? bad([problem('reading.notAnError', field)]) : good(ms)
}

function signedError(text: string): number | undefined {
  const [, sign = '', rest = ''] = /^([+\-−]?)\s*(.*)$/.exec(text) ?? []
  const ms = plainMs(rest)
  return ms === undefined ? undefined : sign === '' || sign === '+' ? ms : 0 - ms
}

function plainMs(text: string): number | undefined {
  if (secondsOnly.test(text)) return thousandths(text)
  const [all, hours = '0', minutes = '', seconds = ''] = minutesAndSeconds.exec(text) ?? []
  return all === undefined
    ? undefined
    : (Number(hours) * 60 + Number(minutes)) * minuteMs + thousandths(seconds)
}

/** Seconds typed as a decimal of at most three places, in milliseconds, exact. */
function thousandths(text: string): number {
  const { units, scale } = decimalOf(text) ?? { units: 0n, scale: 0 }
  return Number(units * 10n ** BigInt(3 - scale))
}

/** The nearer way round the dial of twelve hours: never more than six hours fast or slow. */
function shownError(text: string, localMs: number): number | undefined {
  const [all, hours, minutes, seconds = '0'] = dialTime.exec(text) ?? []
  if (all === undefined) return undefined
  const shown = (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) * 1000
  const ahead = (((shown - localMs) % halfDayMs) + halfDayMs) % halfDayMs
  return ahead > halfDayMs / 2 ? ahead - halfDayMs : ahead
}
