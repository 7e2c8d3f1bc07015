import type { Block } from './flow.ts'
import type { ElementOptions, Sheet } from './sheet.ts'
import { inks } from './styles.ts'
import type { SetLine, Style } from './typesetter.ts'

/** Text and how it is set. */
export interface Piece {
  readonly text: string
  readonly style: Style
}

/** Where text stands across the page and what it is. */
export interface Cell {
  readonly tag: 'H1' | 'H2' | 'P' | 'TH' | 'TD'
  readonly x: number
  readonly width: number
  readonly align?: 'left' | 'right'
  readonly scope?: ElementOptions['scope']
  readonly pieces: readonly Piece[]
}

/** A rule: fine between entries, a line above a total, a double line under one. */
export interface Rule {
  readonly kind: 'hair' | 'line' | 'double'
  readonly from: number
  readonly to: number
}

/** How a row stands among its neighbours. */
export interface RowOptions {
  readonly tag?: 'TR' | 'Div'
  readonly above?: number
  readonly below?: number
  readonly ruleAbove?: Rule | undefined
  readonly ruleBelow?: Rule | undefined
  readonly keep?: boolean
  readonly ruled?: boolean
}

/** The tallest part of a row that is laid in one piece, in points; longer text goes on in the next, on the next page if need be. */
const tallest = (sheet: Sheet): number => Math.min(120, sheet.capacity / 2)

/** Cells side by side on shared baselines, as one block, or as several where a text is very long. */
export function row(sheet: Sheet, cells: readonly Cell[], options: RowOptions = {}): Block[] {
  const most = tallest(sheet)
  const columns = cells.map(cell =>
    sliced(
      cell.pieces.flatMap(piece => setPiece(sheet, piece, cell.width)),
      most,
    ),
  )
  const count = Math.max(1, ...columns.map(column => column.length))
  return Array.from({ length: count }, (_, i) => {
    const lines = columns.map(column => column[i] ?? [])
    return rowBlock(sheet, cells, lines, {
      ...options,
      above: i === 0 ? (options.above ?? 0) : 0,
      below: i === count - 1 ? (options.below ?? 0) : 0,
      ruleAbove: i === 0 ? options.ruleAbove : undefined,
      ruleBelow: i === count - 1 ? options.ruleBelow : undefined,
      keep: i === count - 1 && options.keep === true,
    })
  })
}

const setPiece = (sheet: Sheet, { text, style }: Piece, width: number): SetLine[] =>
  text === '' ? [] : sheet.set.lines(text, style, width)

function sliced(lines: readonly SetLine[], most: number): SetLine[][] {
  const slices: SetLine[][] = []
  let height = most
  for (const line of lines) {
    if (height + line.style.leading > most) {
      slices.push([])
      height = 0
    }
    slices.at(-1)?.push(line)
    height += line.style.leading
  }
  return slices
}

const linesHeight = (lines: readonly SetLine[]) => lines.reduce((sum, line) => sum + line.style.leading, 0)

function rowBlock(
  sheet: Sheet,
  cells: readonly Cell[],
  lines: readonly SetLine[][],
  { tag = 'Div', above = 0, below = 0, ruleAbove, ruleBelow, keep = false, ruled = true }: RowOptions,
): Block {
  const height = above + Math.max(0, ...lines.map(linesHeight)) + below
  return {
    height,
    keep,
    ruled,
    draw: y => {
      if (ruleAbove) drawRule(sheet, ruleAbove, y)
      sheet.within(tag, () => {
        cells.forEach((cell, i) => {
          drawCell(sheet, cell, lines[i] ?? [], y + above)
        })
      })
      if (ruleBelow) drawRule(sheet, ruleBelow, y + height)
    },
  }
}

function drawCell(sheet: Sheet, cell: Cell, lines: readonly SetLine[], y: number): void {
  const draw = () => {
    let at = y
    for (const line of lines) {
      sheet.set.draw(line, cell.align === 'right' ? cell.x + cell.width - line.width : cell.x, at)
      at += line.style.leading
    }
  }
  const isCell = cell.tag === 'TD' || cell.tag === 'TH'
  if (lines.length > 0) sheet.say(cell.tag, draw, cell.scope ? { scope: cell.scope } : {})
  else if (isCell) sheet.say(cell.tag, null)
}

const widths = { hair: 0.5, line: 0.8, double: 0.8 } as const

/** Draws a rule whose last stroke lies at `y`. */
function drawRule(sheet: Sheet, { kind, from, to }: Rule, y: number): void {
  sheet.decorate(() => {
    const { document } = sheet
    document.lineWidth(widths[kind]).strokeColor(kind === 'hair' ? inks.hair : inks.ink)
    for (const up of kind === 'double' ? [0, 2.2] : [0])
      document
        .moveTo(from, y - up)
        .lineTo(to, y - up)
        .stroke()
  })
}

/** A rule by itself, between blocks. */
export const ruleBlock = (sheet: Sheet, rule: Rule): Block => ({
  height: 0,
  draw: y => drawRule(sheet, rule, y),
})
