import type { ConditionReportContents, PaperPin } from '../../../core/papers/working.ts'
import type { Form } from '../../../core/vocabulary/clock.ts'
import { type View, views } from '../../../core/vocabulary/intake.ts'
import type { Block } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { inks, styles } from '../kit/styles.ts'
import { labelCell, piece } from './entry.ts'
import { drawOutline, outline, outlineSheet } from './outlines.ts'
import type { Desk } from './speech.ts'

/** A pin with the number of its note. */
interface Pinned extends PaperPin {
  readonly note: number
}

/** A place on the page, in points. */
interface Frame {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const gap = 14
const pinRadius = 6.5

/** The outline drawing of each view with its pins, all four side by side. */
export function viewBlocks(d: Desk, contents: ConditionReportContents): Block[] {
  const { sheet, words } = d
  const pins = contents.notes.flatMap((note, i) => note.pins.map(pin => ({ ...pin, note: i + 1 })))
  const width = (sheet.width - gap * (views.length - 1)) / views.length
  const height = (width * outlineSheet.height) / outlineSheet.width
  const xOf = (column: number) => sheet.body + column * (width + gap)
  const named = views.map((view, column) => ({
    tag: 'P' as const,
    x: xOf(column),
    width,
    pieces: [piece(words.papers.condition.views[view], styles.small)],
  }))
  const label = labelCell(sheet, words.papers.condition.drawings)
  return [
    ...row(sheet, [label, ...named], { above: 5, below: 1, keep: true }),
    {
      height: height + 10,
      draw: y => {
        views.forEach((view, column) => {
          const here = pins.filter(pin => pin.view === view)
          drawView(d, contents.clock.form, view, here, { x: xOf(column), y, width, height })
        })
      },
    },
  ]
}

function drawView(
  { sheet, words }: Desk,
  form: Form,
  view: View,
  pins: readonly Pinned[],
  frame: Frame,
): void {
  const say = words.papers.condition
  const alt = say.viewAlt(say.views[view], pins.map(pin => pin.note).join(', '))
  sheet.say(
    'Figure',
    () => {
      const { document } = sheet
      document.lineWidth(0.7).strokeColor(inks.hair)
      document.rect(frame.x, frame.y, frame.width, frame.height).stroke()
      drawOutline(sheet, outline(form, view), frame)
      for (const pin of pins) drawPin(sheet, pin, frame)
    },
    { alt },
  )
}

/** A filled disc with the note's number, kept inside the frame. */
function drawPin({ document, set }: Sheet, { x, y, note }: Pinned, frame: Frame): void {
  const within = (share: number, from: number, length: number) =>
    from + Math.min(Math.max(share * length, pinRadius), length - pinRadius)
  const [cx, cy] = [within(x, frame.x, frame.width), within(y, frame.y, frame.height)]
  document.circle(cx, cy, pinRadius).lineWidth(1).fillAndStroke(inks.ink, '#ffffff')
  const style = { face: 'strong', size: note > 99 ? 6 : 8, leading: 10, ink: '#ffffff' } as const
  const [line] = set.lines(String(note), style, 20)
  if (line) set.draw(line, cx - line.width / 2, cy - 4.6)
}
