import type { Block, Section } from '../kit/flow.ts'
import { type Cell, type Piece, row } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { styles } from '../kit/styles.ts'
import { hairline, piece } from './entry.ts'

/** A column: its head, and its width in points (the one without takes what is left). Figures stand right. */
export interface Column {
  readonly head: string
  readonly width?: number
  readonly align?: 'right'
}

/** What stands in the margin column, and in each further column. */
export interface TableRow {
  readonly margin: string
  readonly cells: readonly (readonly Piece[])[]
}

const gap = 12

/** A ruled table whose head is drawn again on each page it runs on to. The first head belongs to the margin column. */
export function table(
  sheet: Sheet,
  marginHead: string,
  columns: readonly Column[],
  rows: readonly TableRow[],
): Section {
  const places = placed(sheet, columns)
  const margin = { x: sheet.left, width: sheet.rule - sheet.left - 8 }
  const heads: Cell[] = [
    { tag: 'TH', scope: 'Column', ...margin, pieces: [piece(marginHead, styles.label)] },
    ...places.map(({ head, ...place }) => ({
      tag: 'TH' as const,
      scope: 'Column' as const,
      ...place,
      pieces: [piece(head, styles.label)],
    })),
  ]
  const [running] = row(sheet, heads, {
    tag: 'TR',
    above: 6,
    below: 2,
    keep: true,
    ruleBelow: { kind: 'line', from: sheet.left, to: sheet.right },
  })
  const blocks = rows.flatMap(({ margin: text, cells }, i) => {
    const first: Cell = { tag: 'TD', ...margin, pieces: [piece(text, styles.label)] }
    const rest = places.map(
      ({ head: _, ...place }, c): Cell => ({ tag: 'TD', ...place, pieces: cells[c] ?? [] }),
    )
    return row(sheet, [first, ...rest], {
      tag: 'TR',
      above: 4,
      below: 4,
      ruleBelow: hairline(sheet),
      keep: i === rows.length - 1,
    })
  })
  return running ? { tag: 'Table', running, blocks: [running, ...blocks] } : { tag: 'Table', blocks }
}

/** The width that the widest of the texts needs, and no less than the head. */
export const widest = (sheet: Sheet, head: string, texts: readonly string[]): number =>
  Math.ceil(
    Math.max(
      sheet.set.width(head, styles.label),
      ...[...new Set(texts)].map(text => sheet.set.width(text, styles.body)),
    ),
  )

function placed(sheet: Sheet, columns: readonly Column[]) {
  const fixed = columns.reduce((sum, column) => sum + (column.width ?? 0) + gap, -gap)
  let x = sheet.body
  return columns.map(({ head, width = sheet.width - fixed, align = 'left' as const }) => {
    const place = { head, x, width, align }
    x += width + gap
    return place
  })
}

/** A block drawn as one with what follows it. */
export const kept = (blocks: readonly Block[]): Block[] => blocks.map(block => ({ ...block, keep: true }))
