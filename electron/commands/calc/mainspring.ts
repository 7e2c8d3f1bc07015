import { type MainspringInput, mainspring } from '../../../core/horology/mainspring.ts'
import { calculation } from './calculation.ts'
import { number, record } from './shape.ts'

export default calculation(
  record<MainspringInput>({ barrelMm: number, arborMm: number, thicknessMm: number }),
  mainspring,
)
