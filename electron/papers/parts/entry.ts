import type { Block } from '../kit/flow.ts'
import { type Cell, type Piece, type RowOptions, type Rule, row } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { styles } from '../kit/styles.ts'
import type { Style } from '../kit/typesetter.ts'

/** Text in a style. */
export const piece = (text: string, style: Style = styles.body): Piece => ({ text, style })

/** A fine rule from the margin column to the right edge. */
export const hairline = (sheet: Sheet): Rule => ({ kind: 'hair', from: sheet.left, to: sheet.right })

/** Where an entry's text stands, where not across the whole body. */
interface Span {
  readonly x: number
  readonly width: number
}

/** A label in the margin column. */
export const labelCell = (sheet: Sheet, label: string): Cell => ({
  tag: 'P',
  x: sheet.left,
  width: sheet.rule - sheet.left - 8,
  pieces: [piece(label, styles.label)],
})

/** A label in the margin column and its text in the body. */
export function entry(
  sheet: Sheet,
  label: string,
  pieces: readonly Piece[],
  options: RowOptions & { readonly span?: Span } = {},
): Block[] {
  const { x, width } = options.span ?? { x: sheet.body, width: sheet.width }
  const cells = [labelCell(sheet, label), { tag: 'P', x, width, pieces }] as const
  const air = sheet.narrow ? 3 : 5
  return row(sheet, cells, { above: air, below: air, ...options })
}

/** An entry with a fine rule under it. */
export const ruledEntry = (
  sheet: Sheet,
  label: string,
  pieces: readonly Piece[],
  options: RowOptions = {},
): Block[] => entry(sheet, label, pieces, { ruleBelow: hairline(sheet), ...options })

/** Sentences of a list, each behind a dash that hangs clear of the text. */
export function listed(sheet: Sheet, label: string, sentences: readonly string[]): Block[] {
  const last = sentences.length - 1
  return sentences.flatMap((text, i) =>
    row(
      sheet,
      [
        labelCell(sheet, i === 0 ? label : ''),
        { tag: 'P', x: sheet.body, width: 10, pieces: [piece('–')] },
        { tag: 'P', x: sheet.body + 10, width: sheet.width - 10, pieces: [piece(text)] },
      ],
      {
        above: i === 0 ? 5 : 0,
        below: i === last ? 5 : 1,
        ruleBelow: i === last ? hairline(sheet) : undefined,
      },
    ),
  )
}
