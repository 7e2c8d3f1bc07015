import type { PaperSize } from '../../../core/papers/sizes.ts'

/** How a page of a size is divided, in points. */
export interface Layout {
  readonly side: number
  readonly top: number
  readonly foot: number
  /** Where the body of a further page begins. */
  readonly continuedTop: number
  /** Width of the margin column; 0 where a page has none, and no margin rule. */
  readonly column: number
  /** From the margin rule to the body. */
  readonly gutter: number
  /** Whether title and page number run along, and how far the line at the foot lies below the body. */
  readonly running: boolean
  readonly footLine: number
  /** Size of type against that of a sheet. */
  readonly typeScale: number
}

const sheet: Layout = {
  side: 42,
  top: 38,
  foot: 52,
  continuedTop: 62,
  column: 72,
  gutter: 15,
  running: true,
  footLine: 20,
  typeScale: 1,
}

const label = (side: number): Layout => ({
  side,
  top: side,
  foot: side,
  continuedTop: side,
  column: 0,
  gutter: 0,
  running: false,
  footLine: 0,
  typeScale: 1,
})

export const layouts: Readonly<Record<PaperSize, Layout>> = {
  a4: sheet,
  letter: sheet,
  a6: {
    side: 17,
    top: 16,
    foot: 27,
    continuedTop: 38,
    column: 50,
    gutter: 10,
    running: true,
    footLine: 8,
    typeScale: 0.88,
  },
  label62x29: label(6),
  label4x6: label(14),
}
