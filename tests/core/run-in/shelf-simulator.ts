import { dayMs } from '../../../core/calendar/units.ts'
import { type Going, goings, usualLimits } from '../../../core/run-in/limits.ts'
import { windEveryDays } from '../../../core/run-in/movement.ts'
import { defaultPolicy } from '../../../core/run-in/policy.ts'
import type { ShelfClock } from '../../../core/run-in/shelf-clock.ts'
import type { ShelfReading } from '../../../core/run-in/shelf-reading.ts'
import type { VerdictInput } from '../../../core/run-in/to-show.ts'
import { daysAsked } from '../../../core/run-in/verdict.ts'

/** How a simulated clock truly is. Bad ones have to be told from their log alone. */
export type Truth = (typeof good)[number] | (typeof bad)[number]
export const good = [
  'good',
  'slip of a digit',
  'hands set',
  'misheard once',
  'summer time',
  'late reading',
] as const
export const bad = [
  'far off',
  'drifting',
  'alternating by the day',
  'alternating by the wind',
  'stops',
  'stops at night and goes on',
  'hands moved by somebody',
  'strikes one hour wrong',
  'chimes one quarter wrong',
  'does not correct itself',
  'out of beat in its case',
  'not read for a week',
  'never cased',
  'never heard',
] as const

export interface Simulated {
  readonly truth: Truth
  readonly input: VerdictInput
  readonly going: Going
}

const durations: Readonly<Record<Going, readonly number[]>> = {
  'seconds-pendulum': [8, 31],
  'wall-dead-beat': [8, 14],
  'weight-anchor': [8, 1.25],
  'spring-recoil': [8, 14],
  platform: [8],
  cuckoo: [1.25, 8],
  torsion: [400],
  verge: [1.25, 8],
}

/** Numbers from a seed: the multiplicative generator of Park and Miller (CACM 36(7), 1993). */
export function chanceOf(seed: number) {
  let state = (seed * 7919 + 13) % 2_147_483_647 || 1
  const next = () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
  for (let i = 0; i < 10; i++) next()
  return {
    next,
    between: (low: number, high: number) => low + (high - low) * next(),
    sign: () => (next() < 0.5 ? -1 : 1),
    pick: <T>(from: readonly T[]): T => from[Math.floor(next() * from.length)] as T,
    /** Near normal with this deviation: the sum of twelve even draws. */
    normal: (deviation: number) =>
      (Array.from({ length: 12 }, next).reduce((sum, one) => sum + one, 0) - 6) * deviation,
  }
}

type Chance = ReturnType<typeof chanceOf>

function clockOf(chance: Chance, going: Going, truth: Truth): ShelfClock {
  const chime =
    truth === 'chimes one quarter wrong' || truth === 'does not correct itself' || chance.next() < 0.3
  const silent = truth !== 'strikes one hour wrong' && truth !== 'never heard' && chance.next() < 0.2
  return {
    durationDays: chance.pick(durations[going]),
    sprung: going === 'spring-recoil' || going === 'platform' || going === 'torsion',
    isWound: true,
    strike: silent && !chime ? 'none' : chance.pick(['hours', 'hours-half'] as const),
    countWheel: chance.next() < 0.3,
    chime,
    chimeCorrects: truth === 'does not correct itself' || (chime && chance.next() < 0.5),
    setInBeat: truth === 'out of beat in its case' || truth === 'never cased' || going !== 'platform',
  }
}

const start = Date.UTC(2027, 2, 22, 9)

/** The true error in seconds after so many days. */
function errorAt(
  truth: Truth,
  going: Going,
  rate: number,
  chance: Chance,
  { every, windDays, wrongDay, needed }: Shelf,
) {
  const { perDay, steady } = usualLimits[going]
  const curve = going === 'spring-recoil' || going === 'platform' ? steady * 0.5 : 0
  const jump = chance.sign() * chance.between(6 * steady + 60, 6 * steady + 3600)
  // A parabola over T days lies T² ÷ 13.4 about its line; over the longest stretch this one lies two to four limits about it.
  const longest = needed * 0.6
  const drift = (chance.sign() * chance.between(2, 4) * steady * 13.4) / longest ** 2
  return (day: number): number => {
    const wave = curve * Math.sin((Math.PI * (day % windDays)) / windDays)
    const going = rate * day + wave + chance.normal(steady * 0.25)
    switch (truth) {
      case 'far off':
        return going + Math.sign(rate || 1) * perDay * 1.5 * day
      case 'drifting':
        return going + drift * day * day
      case 'alternating by the day':
        return going + (Math.round(day / every) % 2 === 0 ? 2 : -2) * steady
      case 'alternating by the wind': {
        const into = day % (2 * windDays)
        return going + 6 * steady * Math.min(into, 2 * windDays - into)
      }
      case 'stops at night and goes on':
      case 'hands moved by somebody':
        return going + (day >= wrongDay - 0.3 ? jump : 0)
      default:
        return going
    }
  }
}

/** A log of a clock that truly is so, read as its policy asks; whoever reads hears hours enough to have heard them all. */
export function simulated(seed: number, truth: Truth): Simulated {
  const chance = chanceOf(seed)
  const going = chance.pick(goings)
  const clock = clockOf(chance, going, truth)
  const policy = defaultPolicy(clock.durationDays)
  const limits = usualLimits[going]
  const shelf = shelfOf(chance, clock, truth)
  const rate = chance.between(-0.5, 0.5) * limits.perDay
  const error = errorAt(truth, going, rate, chance, shelf)
  const readings: ShelfReading[] = [
    { at: new Date(start).toISOString(), leftSeconds: 0, wound: true, inBeat: true },
  ]
  let offset = 0
  for (const [round, day] of shelf.days.entries()) {
    const ms = start + day * dayMs + minutesLate(truth, day, chance) * 60_000
    const true_ = error((ms - start) / dayMs) + chance.normal(0.4)
    const isSlip = truth === 'slip of a digit' && round === shelf.slipRound
    const slip = isSlip ? chance.pick([100, -200, 40, 600]) * Math.max(1, limits.steady / 5) : 0
    const set = truth === 'hands set' && day === shelf.casedDay
    readings.push({
      at: new Date(Math.round(ms)).toISOString(),
      errorSeconds: true_ - offset + slip,
      ...(set ? { leftSeconds: 0 } : {}),
      ...doneAt(truth, clock, shelf, day),
    })
    if (set) offset = true_
    readings.push(...heardAt(truth, clock, shelf, round, ms))
  }
  return { truth, going, input: { clock, policy, limits, readings, now: readings.at(-1)?.at ?? '' } }
}

type Shelf = ReturnType<typeof shelfOf>

function shelfOf(chance: Chance, clock: ShelfClock, truth: Truth) {
  const policy = defaultPolicy(clock.durationDays)
  const every = policy.readingEveryDays
  const needed = daysAsked(policy, clock)
  const rounds = Math.ceil(needed / every)
  const wrongRound = Math.round(chance.between(0.35, 0.7) * rounds)
  const missed = (round: number) =>
    truth === 'not read for a week' && round > wrongRound && round < wrongRound + 5
  const days = Array.from({ length: rounds }, (_, i) => (i + 1) * every).filter((_, i) => !missed(i + 1))
  const windDays = windEveryDays(clock.durationDays)
  return {
    every,
    needed,
    days,
    windDays,
    wrongDay: wrongRound * every,
    casedDay: Math.round(rounds * 0.4) * every,
    slipRound: 1 + Math.floor(chance.next() * (rounds - 2)),
    wrongHour: Math.ceil(chance.next() * 12),
    wrongQuarter: Math.ceil(chance.next() * 4),
    hoursARound: Math.ceil(26 / rounds),
  }
}

/** Nobody reads to the minute; the last reading is not before its time. On 28 March 2027 the shop's clock goes forward an hour. */
function minutesLate(truth: Truth, day: number, chance: Chance): number {
  const summer = truth === 'summer time' && day >= 6 ? -60 : 0
  const late = truth === 'late reading' ? chance.between(0, 300) : chance.between(-20, 20)
  return truth === 'summer time' ? summer + 60 * Number(day > 12) : Math.max(late, day % 7 === 0 ? 0 : late)
}

function doneAt(truth: Truth, clock: ShelfClock, shelf: Shelf, day: number): Partial<ShelfReading> {
  const { casedDay, every, needed, windDays, wrongDay } = shelf
  const stops =
    truth === 'stops' && day >= wrongDay && (day - wrongDay) % Math.max(3, Math.round(needed / 2)) < every
  const isCased = day === casedDay && truth !== 'never cased'
  const corrects = clock.chimeCorrects && day === casedDay + every
  return {
    ...(Math.floor(day / windDays) > Math.floor((day - every) / windDays) ? { wound: true } : {}),
    ...(stops ? { stopped: true } : {}),
    ...(isCased ? { event: 'cased' as const } : {}),
    ...(day === casedDay ? { inBeat: truth !== 'out of beat in its case' } : {}),
    ...(corrects ? { selfCorrected: truth !== 'does not correct itself' } : {}),
  }
}

/** Hours and quarters heard after the round's reading, one after another. */
function heardAt(truth: Truth, clock: ShelfClock, shelf: Shelf, round: number, ms: number): ShelfReading[] {
  const { hoursARound, wrongHour, wrongQuarter, slipRound } = shelf
  if (truth === 'never heard') return []
  return Array.from({ length: hoursARound }, (_, i) => {
    const shown = ((round * hoursARound + i) % 12) + 1
    const which = (((round * hoursARound + i) % 4) + 1) as 1 | 2 | 3 | 4
    const misheard = truth === 'misheard once' && round === Math.min(slipRound, 3) && i === 0
    const wrong = misheard || (truth === 'strikes one hour wrong' && shown === wrongHour)
    return {
      at: new Date(Math.round(ms + (i + 1) * 600_000)).toISOString(),
      ...(clock.strike === 'none' ? {} : { hour: { shown, counted: wrong ? shown + 1 : shown } }),
      ...(clock.chime
        ? { quarter: { which, right: !(truth === 'chimes one quarter wrong' && which === wrongQuarter) } }
        : {}),
    }
  })
}
