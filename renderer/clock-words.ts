import { beatsOf } from '../core/horology/beats.ts'
import type { Dial, Duration, Form, OrUnknown } from '../core/vocabulary/clock.ts'
import type { Position } from '../core/vocabulary/intake.ts'
import type { Words } from '../core/words/en/index.ts'
import type { Formats } from '../core/words/format.ts'

/** What a list knows of a clock; null and 'unknown' where nobody has looked yet. */
export interface ClockInShort {
  readonly form: Form
  readonly trains: number | null
  readonly duration: OrUnknown<Duration>
  readonly dial: OrUnknown<Dial>
  readonly maker: string
  readonly serial: string
}

/** The words of a code; '' where nobody has looked yet, or where it is the code for all the rest. */
export const seenWords = <Code extends string>(
  words: Readonly<Record<Code, string>>,
  code: OrUnknown<Code>,
): string => (code === 'unknown' || code === 'other' ? '' : words[code])

/** The codes to choose from, first that nobody has looked yet. */
export const orNotLookedAt = (words: Words, choices: Readonly<Record<string, string>>) => ({
  unknown: words.notLookedAt,
  ...choices,
})

/** `8,142.857 beats an hour (train 95-80 / 8-7 / 30)`; '' where nobody has counted. */
export function beatsWords({ register }: Words, { number }: Formats, text: string): string {
  const beats = beatsOf(text)
  if (!beats) return ''
  const said = register.clock
  return beats.train ? said.beatsOfTrain(number(beats.bph), beats.text) : said.beats(number(beats.bph))
}

/** A clock in one line: `longcase clock, 8-day, two trains, painted dial`. */
export const clockWords = (words: Words, { form, duration, trains, dial }: ClockInShort): string =>
  [
    words.forms[form],
    seenWords(words.durations, duration),
    trains === null ? '' : words.papers.trains(trains),
    seenWords(words.dials, dial),
  ]
    .filter(Boolean)
    .join(', ')

/** What tells it from another: maker and serial as read, or ''. */
export const clockMarks = (words: Words, { maker, serial }: Pick<ClockInShort, 'maker' | 'serial'>): string =>
  [maker, serial && words.papers.serial(serial)].filter(Boolean).join(', ')

interface Named {
  readonly item: keyof Words['belongings']
  readonly position: Position | ''
  readonly description?: string
  readonly count?: number
}

/** One belonging: `weight, left`, `winding key`, `2 × finial`. */
export function belongingWords(words: Words, { item, position, description, count = 1 }: Named): string {
  const name = description || words.belongings[item]
  const placed = position ? `${name}, ${words.positions[position]}` : name
  return count > 1 ? `${count} × ${placed}` : placed
}
