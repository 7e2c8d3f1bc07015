import type { Caution } from '../../../core/cautions/cautions.ts'
import { type Block, stacked } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { inks, styles } from '../kit/styles.ts'
import type { Style } from '../kit/typesetter.ts'
import { piece } from './entry.ts'
import { type Desk, said } from './speech.ts'

const padding = { side: 9, top: 3, foot: 5, outside: 7 }

/** The cautions that apply, in a box of their own, closed by the sentence that local codes come first. */
export function cautions(
  { sheet, words }: Desk,
  codes: readonly Caution[],
  style: Style = styles.note,
): Block[] {
  if (codes.length === 0) return []
  const place = { x: sheet.body + padding.side, width: sheet.width - 2 * padding.side }
  const line = (text: string, style: Style) =>
    row(sheet, [{ tag: 'P', ...place, pieces: [piece(text, style)] }])
  const inside = stacked([
    ...line(words.papers.cautions, styles.label),
    ...codes.flatMap(code => line(said(words.cautions, code), style)),
    ...line(words.papers.cautionsDefer, styles.small),
  ])
  const boxHeight = padding.top + inside.height + padding.foot
  return [
    {
      height: boxHeight + 2 * padding.outside,
      draw: y => {
        drawBox(sheet, y + padding.outside, boxHeight)
        inside.draw(y + padding.outside + padding.top)
      },
    },
  ]
}

const drawBox = (sheet: Sheet, y: number, height: number): void =>
  sheet.decorate(() => {
    sheet.document.lineWidth(0.7).strokeColor(inks.ink).rect(sheet.body, y, sheet.width, height).stroke()
  })
