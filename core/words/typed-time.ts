import { addMonths, type CivilDate, isCivilDate } from '../calendar/civil.ts'

/** What a time is read against: the shop's today, and the language its months are typed in. */
export interface TimeReading {
  readonly today: CivilDate
  /** BCP 47. */
  readonly locale: string
}

const two = (text: string): string => text.padStart(2, '0')

/** `HH:MM` or `HH:MM:SS` of `9:20`, `09.20` or `09:20:30`; undefined where there is no such time. */
function clockTime(text: string): string | undefined {
  const [, hours, minutes, seconds] = /^(\d{1,2})[:.](\d{2})(?::(\d{2}))?$/.exec(text) ?? []
  if (hours === undefined || minutes === undefined) return undefined
  if (Number(hours) > 23 || Number(minutes) > 59 || Number(seconds ?? 0) > 59) return undefined
  return [two(hours), minutes, ...(seconds === undefined ? [] : [seconds])].join(':')
}

const bare = (text: string): string => text.toLowerCase().replaceAll('.', '')

/** The number of a month by its name, short or whole, in the language or in English; undefined for what is none. */
function monthOf(text: string, locale: string): number | undefined {
  const numbers = Array.from({ length: 12 }, (_, month) => month)
  const found = numbers.find(month =>
    [locale, 'en'].some(language =>
      (['short', 'long'] as const).some(length => {
        const format = new Intl.DateTimeFormat(language, { day: 'numeric', month: length, timeZone: 'UTC' })
        const parts = format.formatToParts(new Date(Date.UTC(2027, month, 1)))
        return bare(parts.find(({ type }) => type === 'month')?.value ?? '') === bare(text)
      }),
    ),
  )
  return found === undefined ? undefined : found + 1
}

/** The date of a day and a month: of the year typed, or the last one that is not after today. */
function dateOf(
  day: string,
  month: number,
  year: string | undefined,
  today: CivilDate,
): CivilDate | undefined {
  const inYear = (of: string) => `${of}-${two(String(month))}-${two(day)}`
  if (year !== undefined) return inYear(year)
  const thisYear = inYear(today.slice(0, 4))
  return thisYear <= today ? thisYear : inYear(addMonths(today, -12).slice(0, 4))
}

/** The date typed before the time: none for today, `2026-11-25`, `25 Nov`, `Nov 25`, either with a year. */
function typedDate(words: readonly string[], { today, locale }: TimeReading): CivilDate | undefined {
  const [first, second, year] = words
  if (first === undefined) return today
  if (second === undefined) return first
  const [day, name] = /^\d/.test(first) ? [first, second] : [second, first]
  const month = monthOf(name, locale)
  const number = /^(\d{1,2})\.?$/.exec(day)?.[1]
  if (month === undefined || number === undefined || words.length > 3) return undefined
  return dateOf(number, month, year, today)
}

/**
 * A time of the shop's own clock as it is typed at the bench, as `YYYY-MM-DDTHH:MM` (with seconds where they were typed):
 * `09:20` is today's, `25 Nov 09:20` the last such day. Anything else comes back as it is, to be refused where it is no time.
 */
export function plainTime(typed: string, reading: TimeReading): string {
  const words = typed
    .trim()
    .split(/[\s,]+|(?<=\d)T(?=\d)/)
    .filter(Boolean)
  const time = clockTime(words.at(-1) ?? '')
  const date = time === undefined ? undefined : typedDate(words.slice(0, -1), reading)
  return date !== undefined && isCivilDate(date) ? `${date}T${time}` : typed.trim()
}
