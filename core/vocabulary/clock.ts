/** The forms of clock the shop takes in, with what is usual for each. Common practice. */
export const forms = {
  longcase: { power: 'weight', duration: '8-day', trains: 2 },
  bracket: { power: 'spring', duration: '8-day', trains: 2 },
  mantel: { power: 'spring', duration: '8-day', trains: 2 },
  wall: { power: 'spring', duration: '8-day', trains: 1 },
  cuckoo: { power: 'weight', duration: '30-hour', trains: 2 },
  carriage: { power: 'spring', duration: '8-day', trains: 2 },
  torsion: { power: 'spring', duration: '400-day', trains: 1 },
  lantern: { power: 'weight', duration: '30-hour', trains: 2 },
  skeleton: { power: 'fusee', duration: '8-day', trains: 1 },
  ship: { power: 'spring', duration: '8-day', trains: 2 },
  novelty: { power: 'spring', duration: '30-hour', trains: 1 },
  other: { power: 'spring', duration: '8-day', trains: 1 },
} as const

/** A form of clock. */
export type Form = keyof typeof forms

/** What drives the clock. */
export const powers = ['spring', 'fusee', 'weight', 'electric-rewind', 'mains'] as const
export type Power = (typeof powers)[number]

/** How long the clock is made to run on one wind. */
export const durations = ['30-hour', '8-day', '14-day', '31-day', 'year', '400-day'] as const
export type Duration = (typeof durations)[number]

/** Escapements met at the counter. */
export const escapements = [
  'recoil',
  'dead-beat',
  'verge',
  'platform-lever',
  'cylinder',
  'brocot',
  'pin-wheel',
  'other',
] as const
export type Escapement = (typeof escapements)[number]

/** How the strike counts: a count wheel can go out of step with the hands, a rack cannot (GO). */
export const strikes = ['none', 'count-wheel', 'rack', 'passing'] as const
export type Strike = (typeof strikes)[number]

/** What the chime plays, and whether it sets itself right. */
export const chimes = ['none', 'four-quarter', 'ting-tang', 'melody'] as const
export type Chime = (typeof chimes)[number]

/** Dials by surface; the surface decides which cautions apply. */
export const dials = [
  'silvered',
  'painted',
  'vitreous-enamel',
  'porcelain',
  'paper',
  'brass',
  'composite',
  'other',
] as const
export type Dial = (typeof dials)[number]

/** One of a vocabulary's codes, or that nobody has looked yet. */
export type OrUnknown<Code extends string> = Code | 'unknown'

/** What is on record of a movement, as far as somebody looked. */
export interface MovementSeen {
  readonly form: Form
  /** 1 to 3; null where nobody has looked yet. */
  readonly trains: number | null
  readonly power: OrUnknown<Power>
  readonly duration: OrUnknown<Duration>
}

/** What is planned by until somebody looks: what is on record, and for the rest what is usual for the form. Common practice. */
export function supposedMovement({ form, trains, power, duration }: MovementSeen) {
  const usual = forms[form]
  return {
    trains: trains ?? usual.trains,
    power: power === 'unknown' ? usual.power : power,
    duration: duration === 'unknown' ? usual.duration : duration,
  }
}

/** What drives a clock; what is usual for its form while nobody has looked. */
export const driveOf = ({ form, power }: Pick<MovementSeen, 'form' | 'power'>): Power =>
  power === 'unknown' ? forms[form].power : power

/** Whether a clock goes by a platform with a balance, not by a pendulum: by its escapement, while nobody has looked by its form. Common practice. */
export const hasPlatform = ({
  form,
  escapement,
}: {
  form: Form
  escapement: OrUnknown<Escapement>
}): boolean =>
  escapement === 'platform-lever' ||
  escapement === 'cylinder' ||
  (escapement === 'unknown' && (form === 'carriage' || form === 'ship'))
