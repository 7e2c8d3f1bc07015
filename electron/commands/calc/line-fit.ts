import { lineFit } from '../../../core/statistics/line-fit.ts'
import { calculation } from './calculation.ts'
import { list, number, record } from './shape.ts'

interface Input {
  readonly x: readonly number[]
  readonly y: readonly number[]
}

export default calculation(record<Input>({ x: list(number), y: list(number) }), ({ x, y }) => lineFit(x, y))
