import { type TrainInput, train } from '../../../core/horology/train.ts'
import { calculation } from './calculation.ts'
import { list, number, record } from './shape.ts'

export default calculation(
  record<TrainInput>({ wheels: list(number), pinions: list(number), escape: number }),
  train,
)
