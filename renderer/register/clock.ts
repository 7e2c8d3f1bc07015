import type { InferResponseType } from 'hono/client'
import type { CoverReason } from '../../core/warranty/cover.ts'
import type { Words } from '../../core/words/en/index.ts'
import type { Formats } from '../../core/words/format.ts'
import { answer, api } from '../api.ts'

/** A clock with its owners over time and its whole history. */
export type ClockView = InferResponseType<(typeof api.pages.clocks)[':id']['$get']>

/** One visit of the clock to the shop. */
export type Visit = ClockView['visits'][number]

/** What each form on a clock's page is given. */
export interface ClockProps {
  readonly view: ClockView
  /** Closes the form: the act is written, or the person went back. */
  readonly close: () => void
}

/** The query of one clock. */
export const clockQuery = (id: number) => ({
  queryKey: ['clock', id],
  queryFn: () => answer(api.pages.clocks[':id'].$get({ param: { id: String(id) } })),
})

/** A reason for covering or not, as a sentence with dates and causes ready to be read. */
export function coverReason(words: Words, formats: Formats, { code, values }: CoverReason): string {
  const exclusions: Readonly<Record<string, string>> = words.exclusions
  const shown = Object.entries(values).map(([name, value]) => {
    if (name.endsWith('Date')) return [name, formats.date(String(value))]
    return [name, name === 'cause' ? (exclusions[value] ?? value) : value]
  })
  return words.coverReasons[code](Object.fromEntries(shown))
}
