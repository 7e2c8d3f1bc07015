import type { Dial, Duration, Form } from '../core/vocabulary/clock.ts'
import type { Position } from '../core/vocabulary/intake.ts'
import type { Words } from '../core/words/en/index.ts'

/** What a list knows of a clock. */
export interface ClockInShort {
  readonly form: Form
  readonly trains: number
  readonly duration: Duration
  readonly dial: Dial
  readonly maker: string
  readonly serial: string
}

/** A clock in one line: `longcase clock, 8-day, two trains, painted dial`. */
export function clockWords(words: Words, { form, duration, trains, dial }: ClockInShort): string {
  const known = dial === 'other' ? [] : [words.dials[dial]]
  return [words.forms[form], words.durations[duration], words.papers.trains(trains), ...known].join(', ')
}

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
