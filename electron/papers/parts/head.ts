import type { PaperOwner, PaperShop, PaperTop } from '../../../core/papers/contents.ts'
import { type Block, beside } from '../kit/flow.ts'
import { type Piece, type RowOptions, row, ruleBlock } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { styles } from '../kit/styles.ts'
import type { Style } from '../kit/typesetter.ts'
import { countWheel } from './count-wheel.ts'
import { entry, hairline, piece, ruledEntry } from './entry.ts'
import { clockLine, clockMarks, type Desk } from './speech.ts'

/** A label and its value in the short list beside the owner. */
export type Fact = readonly [label: string, value: string]

/** The shop's name and where it is found, under the mark, closed by a line. */
export function letterhead({ sheet, words }: Desk, shop: PaperShop): Block[] {
  const where = [...shop.addressLines, shop.phone, shop.email].filter(Boolean).join(' · ')
  const tax = shop.taxNumber ? words.papers.taxNumber(shop.taxNumber) : ''
  const pieces = [piece(shop.name, styles.shop), piece(where, styles.small), piece(tax, styles.small)]
  const blocks = row(sheet, [{ tag: 'P', x: sheet.body, width: sheet.width, pieces }], {
    below: 9,
    ruled: false,
    ruleBelow: { kind: 'line', from: sheet.left, to: sheet.right },
  })
  const radius = sheet.narrow ? 12 : 17
  return [{ ...beside([countWheel(sheet, sheet.left + radius, radius)], blocks), ruled: false }]
}

/** The paper's title and number. */
export function title(
  { sheet }: Desk,
  text: string,
  style: Style = sheet.narrow ? styles.halfTitle : styles.title,
): Block[] {
  const cell = { tag: 'H1', x: sheet.body, width: sheet.width, pieces: [piece(text, style)] } as const
  return row(sheet, [cell], { above: 7, below: 4, ruleBelow: hairline(sheet) })
}

/** The owner's name, address and phone. */
export const ownerPieces = ({ name, addressLines, phone = '' }: PaperOwner): Piece[] => [
  piece(name, styles.strong),
  ...[...addressLines, phone].map(text => piece(text)),
]

/** The owner with address, and beside it the paper's facts: number of the repair, dates and the like. */
export function ownerAndFacts({ sheet, words }: Desk, head: PaperTop, facts: readonly Fact[]): Block[] {
  const half = sheet.width / 2 - 10
  const owner = entry(sheet, words.papers.owner, ownerPieces(head.owner), {
    span: { x: sheet.body, width: half },
  })
  const x = sheet.body + half + (sheet.narrow ? 10 : 30)
  return [beside(owner, factRows(sheet, facts, { x, right: sheet.right })), ruleBlock(sheet, hairline(sheet))]
}

/** Facts one under the other between `x` and `right`: labels left, values right aligned. */
export function factRows(
  sheet: Sheet,
  facts: readonly Fact[],
  { x, right }: { x: number; right: number },
): Block[] {
  const labelWidth = (right - x) * 0.42
  const air = sheet.narrow ? 3 : 5
  return facts.flatMap(([label, value], i) =>
    row(
      sheet,
      [
        { tag: 'P', x, width: labelWidth, pieces: [piece(label, styles.label)] },
        {
          tag: 'P',
          x: x + labelWidth,
          width: right - x - labelWidth,
          align: 'right',
          pieces: [piece(value)],
        },
      ],
      { above: i === 0 ? air : 0, below: i === facts.length - 1 ? air : 0 },
    ),
  )
}

/** The clock, where the paper is about one. */
export function clock(d: Desk, { clock: described }: PaperTop, options: RowOptions = {}): Block[] {
  if (!described) return []
  const pieces = [piece(clockLine(d, described), styles.strong), piece(clockMarks(d, described))]
  return ruledEntry(d.sheet, d.words.papers.clock, pieces, options)
}

/** Number of the repair and date of issue: what stands among the facts of every paper. */
export const commonFacts = ({ words, write }: Desk, head: PaperTop): Fact[] => [
  [words.papers.date, write.date(head.issuedOn)],
  ...(head.repairNumber ? [[words.papers.repair, head.repairNumber] as const] : []),
]
