import type { Block } from '../kit/flow.ts'
import type { Sheet } from '../kit/sheet.ts'
import { inks } from '../kit/styles.ts'
import { entry } from './entry.ts'

/** Empty lines to write on, `gap` points apart, the label beside the first. */
export function writingLines(sheet: Sheet, label: string, count: number, gap = 24): Block[] {
  const [named] = entry(sheet, label, [], { above: 8, below: 0 })
  const line = (labelled: boolean): Block => ({
    height: gap,
    draw: y => {
      if (labelled) named?.draw(y)
      sheet.decorate(() =>
        sheet.document
          .lineWidth(0.5)
          .strokeColor(inks.hair)
          .moveTo(sheet.body, y + gap)
          .lineTo(sheet.right, y + gap)
          .stroke(),
      )
    },
  })
  return Array.from({ length: count }, (_, i) => line(i === 0))
}
