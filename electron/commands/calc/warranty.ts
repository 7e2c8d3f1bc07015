import { type TermInput, warrantyTerm } from '../../../core/warranty/term.ts'
import { calculation } from './calculation.ts'
import { choice, number, optional, record } from './shape.ts'
import { date } from './shapes.ts'

const term = record<TermInput>({
  start: date,
  length: number,
  unit: choice('months', 'days'),
  convention: choice('same-date', 'day-before'),
  pausedDays: optional(number),
  on: date,
})

export default calculation(term, warrantyTerm)
