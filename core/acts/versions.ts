import { heardApart } from './heard.ts'

/** An act's input as it stood in some version, before it is checked. */
export type ActInput = Readonly<Record<string, unknown>>

/** Brings an input of one version to the next one's shape. */
export type Step = (input: ActInput) => ActInput

/** The steps of each act whose input has changed its shape since it first shipped, the first from version 1 to 2. */
export type Steps = Readonly<Record<string, readonly Step[]>>

/** Since version 2 an act that overwrites says what its writer has seen; before, nobody asked: null. */
const saysWhatWasSeen: Step = input => ({ ...input, seen: input.seen ?? null })

/** What was seen has a name of its own since version 2, so that “there was none” is told from “nobody looked”. */
const seenUnder =
  (name: string): Step =>
  ({ seen, ...input }) => ({ ...input, seen: seen === undefined ? null : { [name]: seen } })

/** The owner's word on each repair of an estimate says what was seen of it. */
const wordsSayWhatWasSeen: Step = ({ others, ...input }) => ({
  ...seenUnder('last')(input),
  ...(Array.isArray(others) ? { others: others.map(seenUnder('last')) } : {}),
})

/** Since version 2 a shop says how long it keeps papers; before, ten years were common to all. */
const saysHowLongPapersAreKept: Step = ({ settings, ...input }) => ({
  ...input,
  settings: { ...(settings as ActInput), privacy: { keepPapersYears: 10 } },
})

/** Since this version a clock's beats are exact text, a number or a train, wherever in an input the clock stands; before, they were a whole number. */
const beatsAreExact: Step = input => beatsExact(input) as ActInput

function beatsExact(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(beatsExact)
  if (typeof value !== 'object' || value === null) return value
  const { beatsPerHour, ...others } = value as ActInput
  const shaped = Object.fromEntries(Object.entries(others).map(([key, one]) => [key, beatsExact(one)]))
  return beatsPerHour === undefined ? shaped : { ...shaped, beats: String(beatsPerHour ?? '') }
}

/** A reading tells since version 2 how the hands were found and left, and what was heard apart. */
const heardIsToldApart: Step = ({ handsSet, heardAt, blows, error, ...input }) => ({
  ...input,
  error: handsSet ? null : (error ?? null),
  left: handsSet ? (error ?? null) : null,
  sure: true,
  event: null,
  twelveRight: false,
  fourRight: false,
  selfCorrected: null,
  silent: null,
  repeats: null,
  ...heardApart(typeof heardAt === 'string' ? heardAt : '', typeof blows === 'number' ? blows : null),
})

/** Since version 2 a run may say how steady a clock has to go; before, nobody asked. */
const saysHowSteady: Step = input => ({ ...input, steadyWithin: null })

/** Since its third version a shop has a policy for fourteen-day and year movements, and limits of its own; what was usual then is stated here for good. */
const fortnightAndYear = {
  '14-day': {
    stages: [
      { name: 'out of the case', days: 7 },
      { name: 'in the case', winds: 1 },
    ],
    readingEveryDays: 1,
  },
  year: {
    stages: [
      { name: 'out of the case', days: 14 },
      { name: 'in the case', days: 14 },
    ],
    readingEveryDays: 2,
  },
}
const limitsOfThen = {
  'seconds-pendulum': { perDay: '3', steady: '1.5' },
  'wall-dead-beat': { perDay: '8', steady: '3' },
  'weight-anchor': { perDay: '15', steady: '5' },
  'spring-recoil': { perDay: '34', steady: '10' },
  platform: { perDay: '30', steady: '10' },
  cuckoo: { perDay: '26', steady: '20' },
  torsion: { perDay: '43', steady: '30' },
  verge: { perDay: '900', steady: '200' },
}

const hasAllDurations = (runIn: unknown) => ({ ...(runIn as ActInput), ...fortnightAndYear })

const opensWithLimits: Step = ({ settings, ...input }) => {
  const { runIn, ...others } = settings as ActInput
  return { ...input, settings: { ...others, runIn: hasAllDurations(runIn), limits: limitsOfThen } }
}

/** Since its fourth version a shop says how its copies are made; before, they were made when somebody asked, and the newest thirty kept. */
const opensWithBackups: Step = ({ settings, ...input }) => ({
  ...input,
  settings: {
    ...(settings as ActInput),
    backups: {
      automatic: true,
      folder: '',
      keep: { days: 14, weeks: 8, months: 12, years: null },
      lateDays: 2,
    },
  },
})

/** A changed run-in policy has all durations; what was seen of it was another shape, so that nothing is compared. */
const changesAllDurations: Step = ({ runIn, seen, ...input }) =>
  runIn === undefined ? { ...input, seen } : { ...input, runIn: hasAllDurations(runIn), seen: null }

/** Since version 2 a person has roles; before, everybody could do everything, as an owner can. */
const isAnOwner: Step = input => ({ roles: ['owner'], initials: '', benchHours: '', ...input })

/** Every step there is. An input in a day book is never older than what these can bring up. */
export const steps: Steps = {
  'counter.decideCover': [input => ({ ...input, goodwill: '', seen: null })],
  'counter.estimateDate': [seenUnder('estimatedOn')],
  'counter.takeIn': [beatsAreExact],
  'estimates.recordWord': [wordsSayWhatWasSeen],
  'estimates.write': [seenUnder('last')],
  'register.addClock': [beatsAreExact],
  'register.changeClock': [saysWhatWasSeen, beatsAreExact],
  'register.changeOwner': [saysWhatWasSeen],
  'register.import': [beatsAreExact],
  'register.measureClock': [saysWhatWasSeen],
  'register.preferContact': [saysWhatWasSeen],
  'register.passClock': [saysWhatWasSeen],
  'shelf.correct': [heardIsToldApart],
  'shelf.describePlace': [saysWhatWasSeen],
  'shelf.move': [input => ({ ...input, noted: false })],
  'shelf.pass': [saysWhatWasSeen],
  'shelf.read': [heardIsToldApart],
  'shelf.startRunIn': [saysHowSteady],
  'shop.addPerson': [isAnOwner],
  'shop.changeSettings': [saysWhatWasSeen, changesAllDurations],
  'shop.open': [saysHowLongPapersAreKept, opensWithLimits, opensWithBackups],
  'shop.setPersonActive': [saysWhatWasSeen],
  'stores.changePart': [saysWhatWasSeen],
  'stores.changeVendor': [saysWhatWasSeen],
}

/** The version of an act's input as it is written today: 1 where it never changed. */
export const versionOf = (act: string, known: Steps = steps): number => (known[act]?.length ?? 0) + 1

/**
 * An input of that version in today's shape; undefined where the version is none of the act's: below 1, or above today's, as from a
 * newer program.
 */
export function inTodaysShape(
  act: string,
  version: number,
  input: ActInput,
  known: Steps = steps,
): ActInput | undefined {
  if (!Number.isInteger(version) || version < 1 || version > versionOf(act, known)) return undefined
  return (known[act] ?? []).slice(version - 1).reduce((shaped, step) => step(shaped), input)
}
