import { readFileSync } from 'node:fs'
import type { Form } from '../../../core/vocabulary/clock.ts'
import type { View } from '../../../core/vocabulary/intake.ts'
import { assetPath } from '../kit/assets.ts'
import type { Sheet } from '../kit/sheet.ts'
import { inks, styles } from '../kit/styles.ts'

/** A matrix [a b c d e f] as PDF and SVG write it. */
export type OutlineTransform = readonly [number, number, number, number, number, number]

/** A figure on a dial, standing on its middle. */
interface Numeral {
  readonly by?: OutlineTransform
  readonly text: string
  readonly x: number
  readonly y: number
  readonly size: number
}

/** A path as SVG writes it; filled with paper it hides what lies behind. */
interface Stroke {
  readonly by?: OutlineTransform
  readonly d: string
  readonly width: number
  readonly fill?: 'paper' | 'ink'
  readonly dashed?: boolean
}

export type OutlineMark = Numeral | Stroke

/** A drawing as marks one upon the other, on a sheet of `outlineSheet`. */
export type Outline = readonly OutlineMark[]

/** The size every outline is drawn in, in its own units. */
export const outlineSheet = { width: 240, height: 320 } as const

interface Outlines {
  readonly of: Readonly<Record<Form, Readonly<Record<View, number>>>>
  readonly outlines: readonly Outline[]
}

let read: Outlines | undefined

/** The outline of a form of clock from one side: the drawing of the pages, taken apart into marks. */
export function outline(form: Form, view: View): Outline {
  read ??= JSON.parse(readFileSync(assetPath('outlines.json'), 'utf8')) as Outlines
  return read.outlines[read.of[form][view]] ?? []
}

/** Draws the outline with its upper left corner at `x`, `y`, so many points broad. */
export function drawOutline(
  sheet: Sheet,
  marks: Outline,
  { x, y, width }: { x: number; y: number; width: number },
): void {
  const { document } = sheet
  const scale = width / outlineSheet.width
  document.save().translate(x, y).scale(scale)
  document.lineCap('round').lineJoin('round')
  for (const mark of marks) {
    document.save()
    if (mark.by) document.transform(...(mark.by as [number, number, number, number, number, number]))
    if ('d' in mark) drawStroke(document, mark)
    else drawNumeral(sheet, mark)
    document.restore()
  }
  document.restore()
}

function drawStroke(document: PDFKit.PDFDocument, { d, width, fill, dashed }: Stroke): void {
  document
    .path(d)
    .lineWidth(width * 1.15)
    .strokeColor(inks.soft)
  if (dashed) document.dash(3, { space: 3 })
  if (fill) document.fillAndStroke(fill === 'paper' ? '#ffffff' : inks.soft, inks.soft)
  else document.stroke()
}

function drawNumeral({ document, set }: Sheet, { text, x, y, size }: Numeral): void {
  const style = { ...styles.shop, size, leading: size, ink: inks.soft }
  const [line] = set.lines(text, style, outlineSheet.width)
  if (line) set.draw(line, x - line.width / 2, y - size * 0.4)
  document.fillColor(inks.ink)
}
