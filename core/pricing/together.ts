import { gather, gatherList } from '../checked.ts'
import { type Minor, sumMinor } from '../money/minor.ts'
import { type Checked, good } from '../problems.ts'
import type { Priced, PricedTax } from './price.ts'

const added = (amounts: readonly Minor[]): Checked<Minor> => sumMinor(amounts, 'lines')

/** The groups of all parts, like code and rate made one, in the order they first come. */
const groups = (parts: readonly Priced[]): Checked<PricedTax[]> => {
  const like = Map.groupBy(
    parts.flatMap(part => part.taxes),
    ({ code, rate }) => `${rate} ${code}`,
  )
  return gatherList(
    [...like.values()].map(all =>
      gather({
        code: good(all[0]?.code ?? ''),
        rate: good(all[0]?.rate ?? ''),
        taxable: added(all.map(one => one.taxable)),
        tax: added(all.map(one => one.tax)),
      }),
    ),
  )
}

/**
 * Several documents that stand on one paper, such as the repairs of one estimate: each is priced by itself, for each is billed
 * by itself, and every figure of the whole is the sum of the parts' figures. Problems: `money.tooLarge`.
 */
export function pricedTogether(parts: readonly Priced[]): Checked<Priced> {
  const sum = (of: (part: Priced) => Minor) => added(parts.map(of))
  return gather({
    lines: good(parts.flatMap(part => part.lines)),
    sum: sum(part => part.sum),
    allowances: sum(part => part.allowances),
    charges: sum(part => part.charges),
    taxExclusive: sum(part => part.taxExclusive),
    taxes: groups(parts),
    tax: sum(part => part.tax),
    taxInclusive: sum(part => part.taxInclusive),
    paid: sum(part => part.paid),
    rounding: sum(part => part.rounding),
    due: sum(part => part.due),
  })
}
