import type { PaperLine, PaperMoney } from '../../../core/papers/contents.ts'
import { ownerSteps } from '../../../core/papers/owner-steps.ts'
import { quantityUnitOf } from '../../../core/papers/quantity-unit.ts'
import type { Section } from '../kit/flow.ts'
import type { Piece } from '../kit/row.ts'
import { styles } from '../kit/styles.ts'
import { piece } from './entry.ts'
import { type Desk, said, saidStep } from './speech.ts'
import { type Column, table, widest } from './table.ts'

const taxWidest = 74

/** The lines of work and goods, each with its working under it where the paper shows the working. */
export function moneyLines(d: Desk, { lines }: PaperMoney, showWorking: boolean): Section {
  const { sheet, words } = d
  const say = words.papers.lines
  const cells = lines.map(line => ({
    quantity: quantityText(d, line),
    unit: unitText(d, line),
    tax: taxText(d, line),
    net: d.write.amount(line.net),
  }))
  const column = (head: string, key: 'quantity' | 'unit' | 'net'): Column => ({
    head,
    width: widest(
      sheet,
      head,
      cells.map(cell => cell[key]),
    ),
    align: 'right',
  })
  const taxed = lines.some(line => line.taxes.length > 0)
  const taxColumn: Column = {
    head: say.tax,
    width: Math.min(
      taxWidest,
      widest(
        sheet,
        say.tax,
        cells.map(cell => cell.tax),
      ),
    ),
  }
  const columns = [
    { head: say.description },
    column(say.quantity, 'quantity'),
    column(say.unit, 'unit'),
    ...(taxed ? [taxColumn] : []),
    column(say.net, 'net'),
  ]
  const rows = lines.map((line, i) => {
    const { quantity, unit, tax, net } = cells[i] ?? { quantity: '', unit: '', tax: '', net: '' }
    const figures = [quantity, unit, ...(taxed ? [tax] : []), net].map(text => [piece(text)])
    return {
      margin: say.numbered(i + 1, said(say.kinds, line.kind)),
      cells: [descriptionPieces(d, line, showWorking), ...figures],
    }
  })
  return table(sheet, say.line, columns, rows)
}

/** What was done or fitted, and under it what changed the price and, where shown, the working. */
function descriptionPieces(d: Desk, line: PaperLine, showWorking: boolean): Piece[] {
  const say = d.words.papers.lines
  const under = [
    ...(showWorking ? workingLines(d, line) : []),
    line.unitDiscount && say.unitDiscount(d.write.unitPrice(line.unitDiscount)),
    line.allowance && say.allowance(d.write.unitPrice(line.allowance)),
    line.charge && say.charge(d.write.unitPrice(line.charge)),
  ]
  return [piece(line.description), piece(under.filter(Boolean).join(' · '), styles.small)]
}

const workingLines = ({ words }: Desk, line: PaperLine): string[] =>
  ownerSteps(line.working).map(({ code, values }) => saidStep(words.workingSteps, code, values))

/** `2.5 h`, `3`. */
const quantityText = ({ words, write }: Desk, line: PaperLine): string =>
  [write.quantity(line.quantity), words.papers.lines.units[quantityUnitOf(line)]]
    .filter(Boolean)
    .join('\u00a0')

const unitText = ({ words, write }: Desk, line: PaperLine): string => {
  const unit = write.unitPrice(line.unit)
  return line.per && line.per !== '1' ? words.papers.lines.unitPer(unit, write.quantity(line.per)) : unit
}

const taxText = ({ words, write }: Desk, line: PaperLine): string =>
  line.taxes.map(({ code, rate }) => words.papers.lines.taxRate(code, write.percent(rate))).join(', ') ||
  words.papers.lines.untaxed
