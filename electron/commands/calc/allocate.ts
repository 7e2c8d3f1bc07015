import { gather, whenGood } from '../../../core/checked.ts'
import { allocate } from '../../../core/money/allocate.ts'
import { minor, minorText, parseMinor } from '../../../core/money/minor.ts'
import { good } from '../../../core/problems.ts'
import { calculation } from './calculation.ts'
import { list, number, record } from './shape.ts'
import { currency, money } from './shapes.ts'

interface Input {
  readonly currency: string
  readonly total: string
  readonly weights: readonly number[]
}

export default calculation(record<Input>({ currency, total: money, weights: list(number) }), input => {
  const total = parseMinor(input.total, input.currency, 'total')
  const shares = gather({ total, shares: allocate(total.ok ? total.value : minor(0), input.weights) })
  return whenGood(shares, ({ shares }) =>
    good({ shares: shares.map(share => minorText(share, input.currency)) }),
  )
})
