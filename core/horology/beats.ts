import { decimalOf, decimalText } from '../decimal/decimal.ts'
import { type TrainInput, train } from './train.ts'

/** How often a clock beats. */
export interface Beats {
  /** What is kept and shown: beats an hour as exact decimal text, or the train they follow from, `84-78 / 7-7 / 30`. */
  readonly text: string
  /** Beats an hour, unrounded. */
  readonly bph: number
  /** The going train from the centre arbor; null where beats were given. */
  readonly train: TrainInput | null
}

const fewest = 60
const most = 100_000
const mostPlaces = 9
const trainText = /^(\d{1,5}(?:-\d{1,5})*) *\/ *(\d{1,5}(?:-\d{1,5})*) *\/ *(\d{1,5})$/

/**
 * What was typed as a clock's beats: beats an hour, `8142.857` or `8142,857`, to nine places; or its going train, `84-78 / 7-7 / 30`: the wheels from
 * the centre, the pinions they drive, the teeth of the escape wheel. A train is kept as such, since its beats are often no decimal number, and a
 * whole number in its place would be seconds a day out. Undefined for anything else, and outside 60 to 100000 beats an hour: `18,000` is no clock of eighteen beats.
 */
export function beatsOf(typed: string): Beats | undefined {
  const text = typed.trim()
  const [, wheels, pinions, teeth] = trainText.exec(text) ?? []
  const beats =
    wheels && pinions && teeth
      ? ofTrain({ wheels: counts(wheels), pinions: counts(pinions), escape: Number(teeth) })
      : counted(text.replace(',', '.'))
  return beats && beats.bph >= fewest && beats.bph <= most ? beats : undefined
}

const counts = (text: string): number[] => text.split('-').map(Number)

function ofTrain(given: TrainInput): Beats | undefined {
  const checked = train(given)
  if (!checked.ok) return undefined
  const text = [given.wheels.join('-'), given.pinions.join('-'), given.escape].join(' / ')
  return { text, bph: checked.value.bph, train: given }
}

function counted(text: string): Beats | undefined {
  const value = decimalOf(text)
  if (!value || value.scale > mostPlaces) return undefined
  return { text: decimalText(value), bph: Number(text), train: null }
}
