import type { Form, OrUnknown, Power } from '../vocabulary/clock.ts'
import type { PlaceKind } from '../vocabulary/work.ts'

/** What a place is, as far as it matters to what stands there. */
export interface PlaceRoom {
  readonly kind: PlaceKind
  /** Null where it was not said. */
  readonly weightsHang: boolean | null
}

/** Why a clock may not fit at a place: advice, never a refusal. */
export type Misfit = 'floor' | 'hook' | 'stand' | 'weights'

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

/** What speaks against putting a clock at a place. */
export function misfits(clock: { form: Form; power: OrUnknown<Power> }, place: PlaceRoom): Misfit[] {
  const asks = usual[clock.form]
  return [
    ...(asks && !serves[asks].includes(place.kind) ? [asks] : []),
    ...(clock.power === 'weight' && place.weightsHang === false ? (['weights'] as const) : []),
  ]
}
