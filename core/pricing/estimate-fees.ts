import { gatherList, whenGood } from '../checked.ts'
import { currencyDigits, type Minor, minorOf } from '../money/minor.ts'
import type { PaperLine } from '../papers/contents.ts'
import type { Checked } from '../problems.ts'
import { lineAmount } from './line-amount.ts'

/**
 * What fees for estimates come to on lines that were billed and credited, in minor units at the prices on the lines: a
 * fee that was taken off again counts for nothing.
 */
export const estimateFeesIn = (lines: readonly PaperLine[], currency: string): Checked<Minor> =>
  whenGood(currencyDigits(currency), digits => {
    const fees = lines.filter(({ work }) => work === 'estimate-fee')
    const amounts = gatherList(fees.map((line, i) => lineAmount(line, digits, `lines[${i}]`)))
    return whenGood(amounts, all =>
      minorOf(
        all.reduce((sum, amount) => sum + amount, 0n),
        'lines',
      ),
    )
  })
