import { whenGood } from '../../core/checked.ts'
import type { PaperLine } from '../../core/papers/contents.ts'
import type { BookLine } from '../../core/pricing/book-line.ts'
import { lineWorking } from '../../core/pricing/line-working.ts'
import { type Priced, priced } from '../../core/pricing/price.ts'
import type { TaxRules } from '../../core/pricing/price-input.ts'
import { type Checked, good } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { lineTaxes, taxRules } from '../../core/shop/tax-rules.ts'
import type { Read } from '../file/ledger.ts'
import { bookLines } from './book-lines.ts'
import { accepted } from './checked-in.ts'
import type { RepairRow } from './facts.ts'
import type { LineEntry } from './line-entry.ts'

/** A line as a paper carries it but for its net: what says nothing is left out. */
function paperLine(entry: LineEntry, told: BookLine | null, settings: Settings): Omit<PaperLine, 'net'> {
  const { kind, description, quantity, unit, charge } = entry
  const work = told?.work ?? entry.work
  const line = {
    kind,
    description,
    quantity,
    unit,
    ...(isNothing(charge) ? {} : { charge }),
    taxes: lineTaxes(entry, settings.tax),
    ...(work ? { work } : {}),
  }
  return { ...line, working: told?.working ?? lineWorking(line) }
}

const isNothing = (charge: string): boolean => /^-?[0.]+$/.test(charge)

/** The lines as a paper carries them, the document they price to, and by which rules. */
export interface PricedLines {
  readonly lines: PaperLine[]
  readonly priced: Priced
  readonly tax: TaxRules
}

/** The lines priced; what was taken from the price book is worked out anew. Problems: everything wrong in them, field by field. */
export function checkedLines(
  read: Read,
  repair: RepairRow,
  entries: readonly LineEntry[],
  settings: Settings,
  paid = '0',
): Checked<PricedLines> {
  const tax = taxRules(settings.tax)
  return whenGood(bookLines(read, repair, entries, settings), told => {
    const lines = entries.map((entry, i) => paperLine(entry, told[i] ?? null, settings))
    return whenGood(priced({ currency: settings.place.currency, tax, lines, paid }), document => {
      const net = (index: number) => document.lines[index]?.net ?? document.sum
      return good({ tax, priced: document, lines: lines.map((line, i) => ({ ...line, net: net(i) })) })
    })
  })
}

/** As `checkedLines`; refuses with every problem. */
export const pricedLines = (...of: Parameters<typeof checkedLines>): PricedLines =>
  accepted(checkedLines(...of))
