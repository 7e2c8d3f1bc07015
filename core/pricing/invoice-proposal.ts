import { type Minor, minorText } from '../money/minor.ts'
import type { LineWork } from '../vocabulary/work.ts'
import { priced } from './price.ts'
import type { PriceLine, Tax, TaxRules } from './price-input.ts'

/** A line an invoice can start from. */
export interface ProposedLine extends PriceLine {
  readonly description: string
  readonly charge: string
  readonly work: LineWork | null
  /** The part of the stores that it names. */
  readonly partId: number | null
}

/** A part taken from stock for the repair: how many are still on it, at the price frozen when it was used. */
export interface UsedPart {
  readonly partId: number
  readonly name: string
  readonly quantity: number
  readonly unitPriceMinor: Minor
}

/** By what the invoice is priced, and the most it may come to, tax included; null where nothing is agreed. */
export interface ProposalRules {
  readonly currency: string
  readonly tax: TaxRules
  readonly taxesOfParts: readonly Tax[]
  readonly mostMinor: Minor | null
}

/** Why a part used is left for a person to put on the invoice, or not. */
export type LeftReason = 'nothing-agreed' | 'perhaps-agreed' | 'beyond-limit'

/** What an invoice starts from. */
export interface InvoiceProposal {
  /** As agreed, at the agreed price. */
  readonly agreed: readonly ProposedLine[]
  /** Used at the bench beyond what is agreed line by line, and still within the limit. */
  readonly used: readonly ProposedLine[]
  readonly left: readonly { readonly line: ProposedLine; readonly reason: LeftReason }[]
}

/** The pieces of each part that the agreed lines bill already. */
function agreedPieces(agreed: readonly ProposedLine[]): Map<number, number> {
  const pieces = new Map<number, number>()
  for (const { partId, quantity } of agreed)
    if (partId !== null) pieces.set(partId, (pieces.get(partId) ?? 0) + Number(quantity))
  return pieces
}

/** What of the parts used no agreed line covers, the first used covered first. */
function uncovered(agreed: readonly ProposedLine[], used: readonly UsedPart[]): UsedPart[] {
  const covered = agreedPieces(agreed)
  return used.flatMap(part => {
    const here = Math.min(part.quantity, covered.get(part.partId) ?? 0)
    covered.set(part.partId, (covered.get(part.partId) ?? 0) - here)
    const quantity = Math.ceil(part.quantity - here)
    return quantity > 0 ? [{ ...part, quantity }] : []
  })
}

const lineOf = (
  { partId, name, quantity, unitPriceMinor }: UsedPart,
  { currency, taxesOfParts }: ProposalRules,
): ProposedLine => ({
  kind: 'part',
  description: name,
  quantity: String(quantity),
  unit: minorText(unitPriceMinor, currency),
  charge: '0',
  taxes: taxesOfParts,
  work: null,
  partId,
})

/**
 * What an invoice starts from: the agreed lines, and the parts used that none of them covers. An agreed line and the same
 * part used for it are one line, at the agreed price, so that nothing is billed twice; pieces beyond it are a line of their
 * own at the price frozen when they were used. A part used stays out, with the reason, where nothing is agreed, where an
 * agreed line for a part was written by hand and may be the same, and where it would take the invoice above `mostMinor`.
 */
export function invoiceProposal(
  agreed: readonly ProposedLine[],
  usedParts: readonly UsedPart[],
  rules: ProposalRules,
): InvoiceProposal {
  const { currency, tax, mostMinor } = rules
  const byHand = agreed.some(({ kind, partId }) => kind === 'part' && partId === null)
  const used: ProposedLine[] = []
  const left: InvoiceProposal['left'][number][] = []
  const fits = (line: ProposedLine, most: Minor) => {
    const document = priced({ currency, tax, lines: [...agreed, ...used, line] })
    return document.ok && document.value.taxInclusive <= most
  }
  for (const part of uncovered(agreed, usedParts)) {
    const line = lineOf(part, rules)
    if (mostMinor === null) left.push({ line, reason: 'nothing-agreed' })
    else if (byHand) left.push({ line, reason: 'perhaps-agreed' })
    else if (fits(line, mostMinor)) used.push(line)
    else left.push({ line, reason: 'beyond-limit' })
  }
  return { agreed, used, left }
}
