import type { Block } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import { inks, styles } from '../kit/styles.ts'
import { piece } from './entry.ts'
import type { Desk } from './speech.ts'

/** A dashed line from edge to edge of the page, to cut along, with what lies below it in small type. */
export function cutLine({ sheet }: Desk, below: string): Block {
  const text = piece(below, styles.small)
  const [caption] = row(sheet, [{ tag: 'P', x: sheet.left, width: sheet.right - sheet.left, pieces: [text] }])
  return {
    height: 18,
    ruled: false,
    draw: y => {
      caption?.draw(y + 1)
      sheet.decorate(() => {
        const { document } = sheet
        document.lineWidth(0.7).strokeColor(inks.soft).dash(4, { space: 3 })
        document
          .moveTo(0, y + 13)
          .lineTo(document.page.width, y + 13)
          .stroke()
        document.undash()
      })
    },
  }
}
