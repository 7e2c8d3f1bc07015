import type { ShelfReading } from './shelf-reading.ts'

/** One thing that was seen, heard or done at a reading, with its figures; the catalogue has a sentence for each. */
export interface Seen {
  readonly code: SeenCode
  readonly values: Readonly<Record<string, number>>
}

export type SeenCode =
  | 'stopped'
  | 'wound'
  | 'handsSet'
  | 'nut'
  | 'cased'
  | 'moved'
  | 'oiled'
  | 'adjusted'
  | 'hour'
  | 'half'
  | 'twelveRight'
  | 'fourRight'
  | 'quarterRight'
  | 'quarterWrong'
  | 'strikeRight'
  | 'strikeWrong'
  | 'chimeRight'
  | 'chimeWrong'
  | 'selfCorrected'
  | 'notSelfCorrected'
  | 'silent'
  | 'notSilent'
  | 'repeats'
  | 'repeatsWrong'
  | 'inBeat'
  | 'outOfBeat'

const seen = (code: SeenCode, values: Seen['values'] = {}): Seen => ({ code, values })

const answer = (said: boolean | undefined, yes: SeenCode, no: SeenCode): Seen[] =>
  said === undefined ? [] : [seen(said ? yes : no)]

/** What was seen, heard and done, in the order it is told. */
export function seenAt(reading: ShelfReading): Seen[] {
  const { stopped, wound, leftSeconds, nutTurns, event, hour, half, quarter } = reading
  return [
    ...(stopped ? [seen('stopped')] : []),
    ...(wound ? [seen('wound')] : []),
    ...(leftSeconds === undefined ? [] : [seen('handsSet', { left: leftSeconds })]),
    ...(nutTurns ? [seen('nut', { turns: nutTurns })] : []),
    ...(event ? [seen(event)] : []),
    ...(hour ? [seen('hour', { ...hour })] : []),
    ...(half === undefined ? [] : [seen('half', { counted: half })]),
    ...(quarter ? [seen(quarter.right ? 'quarterRight' : 'quarterWrong', { which: quarter.which })] : []),
    ...(reading.twelveRight ? [seen('twelveRight')] : []),
    ...(reading.fourRight ? [seen('fourRight')] : []),
    ...answer(reading.strikeRight, 'strikeRight', 'strikeWrong'),
    ...answer(reading.chimeRight, 'chimeRight', 'chimeWrong'),
    ...answer(reading.selfCorrected, 'selfCorrected', 'notSelfCorrected'),
    ...answer(reading.silent, 'silent', 'notSilent'),
    ...answer(reading.repeats, 'repeats', 'repeatsWrong'),
    ...answer(reading.inBeat, 'inBeat', 'outOfBeat'),
  ]
}
