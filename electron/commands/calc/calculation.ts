import { bad, type Checked, type Problem } from '../../../core/problems.ts'
import type { Shape } from './shape.ts'

/** One calculation offered outside: the strict shape of what it reads, and what it prints. */
export interface Calculation {
  readonly calculate: (raw: unknown) => Checked<unknown>
}

/**
 * Problems that arise between two fields: not told while one of them is of the wrong shape, for then they may be
 * false.
 */
const between = new Set([
  'allocate.noWeight',
  'calendar.closedAllWeek',
  'calendar.endsBeforeItBegins',
  'calendar.neverOpen',
  'calendar.overlap',
  'fit.lengths',
  'fit.sameX',
  'fit.tooFew',
  'mainspring.arbor',
  'mainspring.thickness',
  'price.discountOverUnit',
  'price.taxTwice',
  'rate.outOfOrder',
  'rate.sameTime',
  'reading.inFuture',
  'strike.endsBeforeItBegins',
  'train.empty',
  'train.pairs',
])

/** A calculation that reads `shape` and answers with `answer`, or with every problem of shape and sums together. */
export function calculation<T>(shape: Shape<T>, answer: (input: T) => Checked<unknown>): Calculation {
  return {
    calculate: raw => {
      const problems: Problem[] = []
      const result = answer(shape(raw, '', problems))
      if (problems.length === 0) return result
      return bad([...problems, ...(result.ok ? [] : besides(problems, result.problems))])
    },
  }
}

/** The sums' problems on fields of which nothing is wrong with the shape. */
const besides = (problems: readonly Problem[], found: readonly Problem[]): Problem[] => {
  const amiss = new Set(problems.map(({ field }) => field))
  const wrongShape = problems.some(({ code }) => code !== 'shape.unknownField')
  return found.filter(({ code, field }) => !amiss.has(field) && !(wrongShape && between.has(code)))
}
