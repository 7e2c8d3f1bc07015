import { type Reading, rateOf } from '../../../core/rate/rate.ts'
import { calculation } from './calculation.ts'
import { list, number, optional, record, yesNo } from './shape.ts'
import { instant } from './shapes.ts'

const reading = record<Reading>({
  at: instant,
  errorSeconds: number,
  wound: optional(yesNo),
  handsSet: optional(yesNo),
  nutTurns: optional(number),
  stopped: optional(yesNo),
})

export default calculation(
  record<{ readings: readonly Reading[] }>({ readings: list(reading) }),
  ({ readings }) => rateOf(readings),
)
