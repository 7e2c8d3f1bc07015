import { whenGood } from '../../../core/checked.ts'
import { good } from '../../../core/problems.ts'
import { blowsBetween, type StrikePattern } from '../../../core/strike/blows.ts'
import { calculation } from './calculation.ts'
import { choice, record } from './shape.ts'
import { localTime } from './shapes.ts'

interface Input {
  readonly pattern: StrikePattern
  readonly from: string
  readonly to: string
}

const pattern = choice<StrikePattern>('hours', 'hours-half', 'four-quarter', 'four-quarter-hours', 'ship')

export default calculation(record<Input>({ pattern, from: localTime, to: localTime }), input =>
  whenGood(blowsBetween(input.pattern, input.from, input.to), blows => good({ blows })),
)
