import { gather, whenGood } from '../checked.ts'
import { parseNonNegative, tenTo } from '../decimal/decimal.ts'
import { divRound } from '../money/div-round.ts'
import { type Minor, minorOf, parseMinor } from '../money/minor.ts'
import type { Checked } from '../problems.ts'

/** How far a bill may pass what the owner agreed to: a percentage and an amount in major units; the smaller of the two counts. */
export interface Overrun {
  readonly overrunPercent: string
  readonly overrunAmount: string
}

/**
 * The most that may be billed on an agreed `limit` without a new go-ahead, in minor units, rounded down. Thresholds differ by place
 * (10 % in Ontario's Consumer Protection Act 2002 s. 10; elsewhere the shop's own terms): a setting, local law first.
 */
export function authorisedTotal(limit: Minor, overrun: Overrun, currency: string): Checked<Minor> {
  const parts = gather({
    percent: parseNonNegative(overrun.overrunPercent, 'overrunPercent'),
    amount: parseMinor(overrun.overrunAmount, currency, 'overrunAmount'),
  })
  return whenGood(parts, ({ percent, amount }) => {
    const share = divRound(BigInt(limit) * percent.units, 100n * tenTo(percent.scale), 'down')
    const margin = share < BigInt(amount) ? share : BigInt(amount)
    return minorOf(BigInt(limit) + margin, 'limit')
  })
}
