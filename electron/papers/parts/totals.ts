import type { Minor } from '../../../core/money/minor.ts'
import type { PaperMoney } from '../../../core/papers/contents.ts'
import { type Block, space } from '../kit/flow.ts'
import { type Rule, row } from '../kit/row.ts'
import { styles } from '../kit/styles.ts'
import { hairline, piece } from './entry.ts'
import type { Desk } from './speech.ts'
import { kept } from './table.ts'

/** One figure at the foot of a column; `final` ones stand in strong type over a double rule. */
export interface Total {
  readonly label: string
  readonly amount: string
  readonly final?: boolean
}

/** Totals in the right part of the body, kept together. */
export function totals({ sheet }: Desk, figures: readonly Total[]): Block[] {
  const x = sheet.narrow ? sheet.body : sheet.body + sheet.width * 0.36
  const width = sheet.right - x
  const figureWidth = Math.max(
    ...figures.map(({ amount }) => Math.ceil(sheet.set.width(amount, styles.total))),
  )
  const across = (kind: Rule['kind']): Rule => ({ kind, from: x, to: sheet.right })
  const blocks = figures.flatMap(({ label, amount, final = false }, i) => {
    const style = final ? styles.total : styles.body
    return row(
      sheet,
      [
        { tag: 'P', x, width: width - figureWidth - 12, pieces: [piece(label, style)] },
        {
          tag: 'P',
          x: sheet.right - figureWidth,
          width: figureWidth,
          align: 'right',
          pieces: [piece(amount, style)],
        },
      ],
      {
        above: final || figures[i - 1]?.final ? 4 : 1.5,
        below: final ? 6 : 1.5,
        ruleAbove: final ? across('line') : undefined,
        ruleBelow: final ? across('double') : undefined,
      },
    )
  })
  return [{ ...space(4), keep: true }, ...kept(blocks.slice(0, -1)), ...blocks.slice(-1)]
}

/** From the sum of the lines to the total with tax; steps that change nothing are left out. */
export function priceTotals(d: Desk, { priced }: PaperMoney, totalLabel: string): Total[] {
  const { write, words } = d
  const say = words.papers.totals
  const step = (label: string, amount: Minor): Total => ({ label, amount: write.amount(amount) })
  const adjusted = priced.allowances !== 0 || priced.charges !== 0
  return [
    step(say.sum, priced.sum),
    ...(priced.allowances === 0 ? [] : [step(say.allowances, priced.allowances)]),
    ...(priced.charges === 0 ? [] : [step(say.charges, priced.charges)]),
    ...(adjusted ? [step(say.taxExclusive, priced.taxExclusive)] : []),
    ...priced.taxes.map(({ code, rate, taxable, tax }) =>
      step(say.tax(code, write.percent(rate), write.amount(taxable)), tax),
    ),
    ...(priced.taxes.length > 1 ? [step(say.allTax, priced.tax)] : []),
    { label: totalLabel, amount: write.money(priced.taxInclusive), final: true },
  ]
}

/** How tax was worked out, in a line under the totals. */
export function taxRules({ sheet, words }: Desk, { tax, priced }: PaperMoney): Block[] {
  if (priced.taxes.length === 0) return []
  const { rules, inclusive } = words.papers.totals
  const sentences = [rules.said(rules.basis[tax.basis], rules.mode[tax.mode]), tax.inclusive ? inclusive : '']
  const pieces = [piece(sentences.filter(Boolean).join(' '), styles.small)]
  return row(sheet, [{ tag: 'P', x: sheet.body, width: sheet.width, pieces }], {
    above: 8,
    below: 6,
    ruleBelow: hairline(sheet),
  })
}
