import { freeAirPerMetre, standardGravity } from './gravity.ts'

/**
 * Half the seconds of a day: a small change of length or gravity, as a fraction, changes the rate by so many
 * seconds a day.
 */
const halfDay = 43_200

/**
 * Seconds a day gained (+) for a pendulum `shorterMm` shorter than `lengthMm`: 43200 ΔL ÷ L (BK p. 50). Small
 * changes.
 */
export const rateOfShortening = (shorterMm: number, lengthMm: number): number =>
  (halfDay * shorterMm) / lengthMm

/**
 * Seconds a day for one turn of a rating nut whose thread rises `pitchMm` a turn. The clock's own log says it
 * better.
 */
export const ratePerNutTurn = (pitchMm: number, lengthMm: number): number =>
  rateOfShortening(pitchMm, lengthMm)

/** Expansion of rod materials per °C. Steel, iron, brass and deal: handbook values that reproduce BK p. 52. */
const expansionPerDegree = { steel: 11.5e-6, iron: 12.6e-6, brass: 18.0e-6, deal: 4.1e-6 } as const

export type RodMaterial = keyof typeof expansionPerDegree

/** Seconds a day lost for each °C warmer, by the rod's expansion alone: 43200 α. */
export const lossPerDegree = (rod: RodMaterial): number => halfDay * expansionPerDegree[rod]

/** Seconds a day lost for each metre higher (free air). */
export const lossPerMetre = (g: number = standardGravity): number => (halfDay * -freeAirPerMetre) / g

/**
 * Theory only: the seconds a day lost against vanishing arcs by a free pendulum swinging `semiArcDegrees` each
 * side, 5400 a² with a in radians, whatever its length (BK p. 34–35). Escapements offset part of it.
 */
export const circularErrorTheory = (semiArcDegrees: number): number =>
  5400 * ((semiArcDegrees * Math.PI) / 180) ** 2

/**
 * The count of beats per hour to try, from a trial: the clock showed `shown` while `elapsed` really passed (same
 * unit). Common practice.
 */
export const trialBph = (bphNow: number, elapsed: number, shown: number): number => (bphNow * elapsed) / shown
