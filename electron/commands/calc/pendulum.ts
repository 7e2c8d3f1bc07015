import { type PendulumInput, pendulum } from '../../../core/horology/pendulum.ts'
import { calculation } from './calculation.ts'
import { number, optional, record } from './shape.ts'

const figure = optional(number)

export default calculation(
  record<PendulumInput>({ bph: figure, lengthMm: figure, g: figure, latitude: figure, heightMetres: figure }),
  pendulum,
)
