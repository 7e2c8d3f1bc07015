import { type Box, type ClockSize, sides } from '../measures/measures.ts'
import type { Form, OrUnknown, Power } from '../vocabulary/clock.ts'
import type { PlaceKind } from '../vocabulary/work.ts'

/** What a place is, as far as it matters to what stands there; null where it was not said. */
export interface PlaceRoom extends Box {
  readonly kind: PlaceKind
  readonly weightsHang: boolean | null
  /** What it bears, in whole grams. */
  readonly bearsG: number | null
}

/** What of a clock decides where it stands. */
export interface ClockToPlace extends ClockSize {
  readonly form: Form
  readonly power: OrUnknown<Power>
}

/** Why a clock may not fit at a place: advice, never a refusal. */
export type Misfit = 'floor' | 'hook' | 'stand' | 'weights' | keyof Box | 'load'

/** Where each form is usually tested; forms that stand or hang alike are left out. Common practice. */
const usual: Readonly<Partial<Record<Form, 'floor' | 'hook' | 'stand'>>> = {
  longcase: 'floor',
  wall: 'hook',
  cuckoo: 'hook',
  bracket: 'stand',
  mantel: 'stand',
  carriage: 'stand',
  torsion: 'stand',
}

/** The kinds of place that serve each. A test stand holds a bare movement of any form. */
const serves: Readonly<Record<'floor' | 'hook' | 'stand', readonly PlaceKind[]>> = {
  floor: ['floor', 'stand'],
  hook: ['hook', 'stand'],
  stand: ['shelf', 'stand'],
}

/** Whether one known measure passes another; an unknown one never does. */
const passes = (clock: number | null, place: number | null): boolean =>
  clock !== null && place !== null && clock > place

/** What speaks against putting a clock at a place: its form, its weights, its size, its load, as far as they are on record. */
export function misfits(clock: ClockToPlace, place: PlaceRoom): Misfit[] {
  const asks = usual[clock.form]
  return [
    ...(asks && !serves[asks].includes(place.kind) ? [asks] : []),
    ...(clock.power === 'weight' && place.weightsHang === false ? (['weights'] as const) : []),
    ...sides.filter(side => passes(clock[side], place[side])),
    ...(passes(clock.weightG, place.bearsG) ? (['load'] as const) : []),
  ]
}
