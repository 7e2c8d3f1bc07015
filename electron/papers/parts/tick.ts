import type { Block } from '../kit/flow.ts'
import { type Piece, type RowOptions, row } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { inks } from '../kit/styles.ts'
import { hairline, labelCell } from './entry.ts'

/** One thing to tick off: what it is, and whether that was done. */
export interface TickLine {
  readonly pieces: readonly Piece[]
  readonly ticked?: boolean
  /** In the margin column, in place of the list's label. */
  readonly label?: string
}

const side = 9

/** Lines with a box to tick before each; `label` stands beside the first. */
export function tickList(
  sheet: Sheet,
  label: string,
  lines: readonly TickLine[],
  { above = 3, below = 3, ...options }: RowOptions = {},
): Block[] {
  return lines.flatMap(({ pieces, ticked = false, label: own }, i) => {
    const indent = side + 8
    const cells = [
      labelCell(sheet, own ?? (i === 0 ? label : '')),
      { tag: 'P' as const, x: sheet.body + indent, width: sheet.width - indent, pieces },
    ]
    const leading = pieces[0]?.style.leading ?? side
    const last = i === lines.length - 1
    const [first, ...rest] = row(sheet, cells, {
      above: i === 0 ? above + 2 : above,
      below: last ? below + 2 : below,
      ruleBelow: last ? hairline(sheet) : undefined,
      ...options,
    })
    if (!first) return rest
    const down = (i === 0 ? above + 2 : above) + (leading - side) / 2
    const boxed: Block = {
      ...first,
      draw: y => {
        first.draw(y)
        box(sheet, y + down, ticked)
      },
    }
    return [boxed, ...rest]
  })
}

function box(sheet: Sheet, y: number, ticked: boolean): void {
  const x = sheet.body
  sheet.decorate(() => {
    const { document } = sheet
    document.lineWidth(0.8).strokeColor(inks.ink).rect(x, y, side, side).stroke()
    if (!ticked) return
    document.lineWidth(1.4).moveTo(x + 1.8, y + 4.8)
    document
      .lineTo(x + 3.9, y + 7.2)
      .lineTo(x + 8.2, y + 1.2)
      .stroke()
  })
}
