import type { StillToShow, Trouble, VerdictCode } from '../../run-in/assess.ts'
import type { CoverReason } from '../../warranty/cover.ts'

type Values = Readonly<Record<string, string | number | null>>
type Sentence = (values: Values) => string

/** The verdict on a run-in log; rates in seconds a day, ready to be shown. */
export const verdicts = {
  nothingRead: () => 'Nothing has been read yet.',
  startAgain: () => 'It stopped or struck wrong: put it right, the test starts again.',
  tooSoon: () => 'Too soon to say: never judge from one day.',
  regulate: v => `Regulate: ${v.ratePerDay} s a day, more than the ${v.limitPerDay} s allowed.`,
  goOn: v => `Well so far: ${v.ranDays} of ${v.neededDays} days run.`,
  mayPass: v => `May pass: ${v.ratePerDay} s a day over ${v.ranDays} days.`,
} satisfies Record<VerdictCode, Sentence>

/** What a clock has still to show before it may pass. */
export const stillToShow = {
  readings: v =>
    `A rate from at least ${v.fewest} readings over ${v.fewestDays} days: so far ${v.readings} over ${v.days}.`,
  running: v => `${v.neededDays} days of running: so far ${v.ranDays}.`,
  wholeWind: v => `One whole wind of ${v.windEveryDays} days, read at both its ends.`,
  rate: v => `A rate within ${v.limitPerDay} s a day: now ${v.ratePerDay}.`,
  strike: () => 'The strike heard right.',
  chime: () => 'The chime heard right.',
  sounds: () => 'Whether it strikes and chimes: nobody has looked yet. Say so in the clock’s description.',
  beat: () => 'The clock in beat.',
} satisfies Record<StillToShow['code'], Sentence>

/** What went wrong on the shelf. */
export const troubles = {
  stopped: () => 'Stopped.',
  strikeWrong: () => 'Struck wrong.',
  chimeWrong: () => 'Chimed wrong.',
  outOfStep: v => `Struck ${v.heard} for ${v.expected}: the count wheel is out of step with the hands.`,
  miscounted: v => `Struck ${v.heard} for ${v.expected}.`,
} satisfies Record<Trouble['kind'], Sentence>

/** Why a warranty covers or does not. Dates ready to be shown. */
export const coverReasons = {
  notBegun: v => `The warranty begins on ${v.startDate}.`,
  ended: v => `The warranty ended on ${v.lastDate}.`,
  excluded: v => `Not covered: ${v.cause}.`,
  inTerm: v => `Within the term, which ends on ${v.lastDate}.`,
  paused: v => `${v.days} days in the shop were added.`,
  restarted: v => `The term began anew on ${v.onDate}.`,
} satisfies Record<CoverReason['code'], Sentence>
