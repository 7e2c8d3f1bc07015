import type { Fault } from '../../run-in/faults.ts'
import type { SeenCode } from '../../run-in/seen.ts'
import type { ToShow } from '../../run-in/to-show.ts'
import type { VerdictCode } from '../../run-in/verdict.ts'
import type { CoverReason } from '../../warranty/cover.ts'

type Values = Readonly<Record<string, string | number | null>>
type Sentence = (values: Values) => string

/** The verdict on a run-in log; rates in seconds a day, ready to be shown. */
export const verdicts = {
  'begin-again': v =>
    `Begin again: a fault on ${v.faultOn}. Since then ${v.observedDays} of ${v.neededDays} days.`,
  regulate: v =>
    `Regulate: it goes steadily, but ${v.ratePerDay} s a day is more than the ${v.limitPerDay} s allowed.`,
  'not-yet': v => `Not yet: ${v.observedDays} of ${v.neededDays} days observed.`,
  'may-pass': v => `May pass: ${v.ratePerDay} s a day over ${v.observedDays} days.`,
} satisfies Record<VerdictCode, Sentence>

/** The verdict in a word or two, for lists. */
export const verdictsInShort = {
  'begin-again': 'begin again',
  regulate: 'regulate',
  'not-yet': 'not yet',
  'may-pass': 'may pass',
} satisfies Record<VerdictCode, string>

/** What a clock has still to show before it may pass. */
export const stillToShow = {
  days: v => `${v.neededDays} days under observation: so far ${v.observedDays}.`,
  wind: v => `One whole wind of ${v.windEveryDays} days, read from one wind to the next; note each wind.`,
  'hours-struck': v =>
    v.hours === ''
      ? 'The strike, last heard wrong, heard right again.'
      : `The strike heard right at ${v.hours} o’clock.`,
  quarters: v =>
    v.quarters === ''
      ? 'The chime, last heard wrong, heard right again.'
      : `The chime heard right at quarter ${v.quarters}.`,
  'self-correction': () => 'The chime put wrong on purpose once, and seen to set itself right.',
  'beat-in-case': () => 'In beat in its case: note when it is cased, and look at the beat there.',
  silent: () => 'Silenced, it has to be silent.',
  repeat: () => 'Asked to repeat, it has to repeat rightly.',
  sounds: () => 'Whether it strikes and chimes: nobody has looked yet. Say so in the clock’s description.',
  rate: v =>
    v.ratePerDay === null
      ? `A rate within ${v.limitPerDay} s a day: too few readings since it was last touched (three over two days).`
      : `A rate within ${v.limitPerDay} s a day: now ${v.ratePerDay} ± ${v.plusMinus}.`,
  steadiness: v =>
    v.scatterSeconds === null
      ? `How steadily it goes: not known yet (within ${v.limitSeconds} s about its line).`
      : `A steady rate, within ${v.limitSeconds} s about its line and not walking one way: now ${v.scatterSeconds}, and ${v.walkPerDay} s a day over the test.`,
  gap: v =>
    v.unobservedDays === 0
      ? 'A reading: the last one is too long ago, and it may have stopped since.'
      : `Readings near enough to one another: ${v.unobservedDays} days were not observed and do not count.`,
} satisfies Record<ToShow['code'], Sentence>

/** What was seen, heard and done at a reading; figures ready to be shown. */
export const seen = {
  stopped: () => 'stopped',
  wound: () => 'wound',
  handsSet: v => `hands set to ${v.left}`,
  nut: v => `nut ${v.turns}`,
  cased: () => 'put into its case',
  moved: () => 'moved to another place',
  oiled: () => 'oiled',
  adjusted: () => 'adjusted',
  hour: v => `struck ${v.counted} at ${v.shown} o’clock`,
  half: v => `struck ${v.counted} at the half hour`,
  twelveRight: () => 'all twelve hours right',
  fourRight: () => 'all four quarters right',
  quarterRight: v => `quarter ${v.which} right`,
  quarterWrong: v => `quarter ${v.which} wrong`,
  strikeRight: () => 'strike right',
  strikeWrong: () => 'strike wrong',
  chimeRight: () => 'chime right',
  chimeWrong: () => 'chime wrong',
  selfCorrected: () => 'put wrong, it set itself right',
  notSelfCorrected: () => 'put wrong, it did not set itself right',
  silent: () => 'silent when silenced',
  notSilent: () => 'not silent when silenced',
  repeats: () => 'repeats rightly',
  repeatsWrong: () => 'repeats wrongly',
  inBeat: () => 'in beat',
  outOfBeat: () => 'out of beat',
} satisfies Record<SeenCode, Sentence>

/** The sound sheet: what a clock sounds, heard right or not, each with its day. */
export const soundSheet = {
  heading: 'Sound sheet',
  hours: 'Hours',
  half: 'Half hour',
  quarters: 'Quarters',
  selfCorrected: 'Sets itself right',
  silent: 'Silent when silenced',
  repeats: 'Repeats',
  right: 'right',
  wrong: 'wrong',
  notHeard: 'not heard yet',
  of: (what: string, said: string) => `${what}: ${said}`,
  on: (said: string, date: string) => `${said} on ${date}`,
}

/** What went wrong on the shelf. */
export const faults = {
  stopped: () => 'Stopped.',
  strikeWrong: () => 'Struck wrong.',
  chimeWrong: () => 'Chimed wrong.',
  outOfStep: v => `Struck ${v.heard} for ${v.expected}: the count wheel is out of step with the hands.`,
  miscounted: v => `Struck ${v.heard} for ${v.expected}.`,
} satisfies Record<Fault['kind'], Sentence>

/** Why a warranty covers or does not. Dates ready to be shown. */
export const coverReasons = {
  notBegun: v => `The warranty begins on ${v.startDate}.`,
  ended: v => `The warranty ended on ${v.lastDate}.`,
  excluded: v => `Not covered: ${v.cause}.`,
  inTerm: v => `Within the term, which ends on ${v.lastDate}.`,
  paused: v => `${v.days} days in the shop were added.`,
  restarted: v => `The term began anew on ${v.onDate}.`,
} satisfies Record<CoverReason['code'], Sentence>
