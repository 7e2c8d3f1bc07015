import { civilDateOf } from '../../../core/calendar/zone.ts'
import type { PaperClock, WorkingStep } from '../../../core/papers/contents.ts'
import type { AnyContents } from '../../../core/papers/working.ts'
import type { Words } from '../../../core/words/en/index.ts'
import { type Formats, formats } from '../../../core/words/format.ts'
import type { Sheet } from '../kit/sheet.ts'

/** The bytes of a photograph by its hash, where they are at hand. */
export type Photographs = (hash: string) => Buffer | undefined

/** What a part needs to speak: the sheet it is laid on, the words, the shop's way to write figures, and its photographs. */
export interface Desk {
  readonly sheet: Sheet
  readonly words: Words
  readonly write: Formats
  /** The civil date of an instant on the shop's own wall. */
  readonly dayOf: (instant: string) => string
  readonly photographs: Photographs
}

export const desk = (sheet: Sheet, contents: AnyContents, words: Words, photographs: Photographs): Desk => ({
  sheet,
  words,
  write: formats(contents),
  dayOf: instant => civilDateOf(instant, contents.timeZone),
  photographs,
})

/** The word for a code; a code that a later catalogue no longer has is printed as it was frozen, never lost. */
export const said = (table: Readonly<Record<string, string>>, code: string): string =>
  Object.hasOwn(table, code) ? (table[code] ?? code) : code

/** The sentence for a step of a figure's working; a step no longer in the catalogue shows its code and values. */
export const saidStep = (
  steps: Readonly<Record<string, (values: WorkingStep['values']) => string>>,
  code: string,
  values: WorkingStep['values'],
): string =>
  (Object.hasOwn(steps, code) && steps[code]?.(values)) || [code, ...Object.values(values)].join(' ')

/** The sentence with its first letter large. */
export const sentence = (text: string): string => text.charAt(0).toLocaleUpperCase('en') + text.slice(1)

/** The clock in one line: `Longcase clock, 8-day, two trains, painted dial`. */
export const clockLine = ({ words }: Desk, clock: PaperClock): string =>
  sentence(
    [
      said(words.forms, clock.form),
      clock.duration && said(words.durations, clock.duration),
      clock.trains && words.papers.trains(clock.trains),
      clock.dial && said(words.dials, clock.dial),
    ]
      .filter(Boolean)
      .join(', '),
  )

/** What it is told from another by; empty where nothing was read on it. */
export const clockMarks = ({ words }: Desk, { maker, serial, marks }: PaperClock): string =>
  [maker && words.papers.makerAsRead(maker), serial && words.papers.serial(serial), marks]
    .filter(Boolean)
    .join(' · ')
