import type { AnyKind } from './kinds.ts'

/** Sizes of paper in points of 1/72 in: A4 and A6 of ISO 216, US Letter 8.5 × 11 in, labels of 62 × 29 mm and 4 × 6 in. */
export const paperSizes = {
  a4: { width: 595.28, height: 841.89 },
  letter: { width: 612, height: 792 },
  a6: { width: 297.64, height: 419.53 },
  label62x29: { width: 175.75, height: 82.2 },
  label4x6: { width: 288, height: 432 },
} as const

/** A size of paper the shop may print on. */
export type PaperSize = keyof typeof paperSizes

const sheets = ['a4', 'letter'] as const
const slips = [...sheets, 'a6'] as const

/** Which sizes a paper comes on, the usual one first. A claim check on A6 is the owner's part alone. */
export const sizesOf: Readonly<Record<AnyKind, readonly PaperSize[]>> = {
  'claim-check': slips,
  estimate: sheets,
  invoice: sheets,
  'credit-note': sheets,
  receipt: slips,
  warranty: sheets,
  tags: ['label62x29', 'label4x6'],
  'condition-report': sheets,
  'go-ahead': sheets,
  'bench-card': sheets,
  'run-in-certificate': sheets,
  'ready-letter': sheets,
  'hand-over': sheets,
  statement: sheets,
  'uncollected-letter': sheets,
}

/** Whether the paper comes on this size. */
export const fitsOn = (kind: AnyKind, size: PaperSize): boolean => sizesOf[kind].includes(size)

/** The size a paper comes on where nobody asked for one: the shop's own where it fits, else the paper's usual one. */
export const usualSize = (kind: AnyKind, shopSize: PaperSize): PaperSize =>
  fitsOn(kind, shopSize) ? shopSize : (sizesOf[kind][0] ?? shopSize)
