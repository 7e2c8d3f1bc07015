import type { Block } from '../kit/flow.ts'
import type { Sheet } from '../kit/sheet.ts'
import { inks } from '../kit/styles.ts'

const notches = 8

/** The program's mark, a count wheel of eight lifting parts, drawn with its middle at `x` and half its width `radius`, in points. */
export const countWheel = (sheet: Sheet, x: number, radius: number): Block => ({
  height: radius * 2,
  draw: y => sheet.decorate(() => drawWheel(sheet.document, x, y + radius, radius)),
})

function drawWheel(document: PDFKit.PDFDocument, x: number, y: number, radius: number): void {
  const point = (r: number, angle: number) => `${x + r * Math.cos(angle)},${y + r * Math.sin(angle)}`
  for (let notch = 0; notch < notches; notch++) {
    const middle = (notch * 2 * Math.PI) / notches
    const [from, to] = [middle - 0.3, middle + 0.3]
    const inner = radius * 0.6
    const lift = `M${point(inner, from)} L${point(radius, from)} A${radius},${radius} 0 0 1 ${point(radius, to)}`
    document
      .path(`${lift} L${point(inner, to)} A${inner},${inner} 0 0 0 ${point(inner, from)} Z`)
      .fill(inks.ink)
  }
}
