import type { Form } from './clock.ts'
import type { Belonging, Position } from './intake.ts'

/** A separable thing by its kind and, where several must be told apart, its place. */
export interface ExpectedBelonging {
  readonly item: Belonging
  readonly position: Position | ''
}

const one = (...items: Belonging[]): ExpectedBelonging[] => items.map(item => ({ item, position: '' }))
const weights: ExpectedBelonging[] = (['left', 'centre', 'right'] as const).map(position => ({
  item: 'weight',
  position,
}))

const byForm: Record<Form, readonly ExpectedBelonging[]> = {
  longcase: [...weights, ...one('pendulum', 'crank', 'case-key', 'hood', 'finial')],
  bracket: one('pendulum', 'key', 'case-key', 'base'),
  mantel: one('pendulum', 'key', 'dome', 'base'),
  wall: [...one('pendulum', 'key', 'case-key'), ...weights],
  cuckoo: [...one('pendulum'), ...weights],
  carriage: one('key', 'travelling-case'),
  torsion: one('dome', 'pendulum', 'key', 'base'),
  lantern: [...one('pendulum', 'key'), { item: 'weight', position: '' }],
  skeleton: one('dome', 'base', 'pendulum', 'key'),
  ship: one('key'),
  novelty: one('key'),
  other: one('pendulum', 'key'),
}

/** What usually comes with a clock of this form and is asked after at the counter, in the order of asking. Common practice. */
export const expectedBelongings = (form: Form): readonly ExpectedBelonging[] => byForm[form]
