import type { PaperTag, TagsContents } from '../../../core/papers/working.ts'
import { type Block, heightOf, type Section, space } from '../kit/flow.ts'
import { type Cell, type Piece, row } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { inks, styles } from '../kit/styles.ts'
import type { Style } from '../kit/typesetter.ts'
import { thingText } from '../parts/belongings.ts'
import { piece } from '../parts/entry.ts'
import { qr } from '../parts/qr.ts'
import { clockLine, clockMarks, type Desk, said, sentence } from '../parts/speech.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** How a tag is set, in points: its number as large as fits, its text, and its code beside them or below. */
interface Setting {
  readonly numbers: readonly number[]
  readonly owner: number
  readonly text: number
  readonly qrSide: number
  /** Room for text at full width; the code then stands at the foot, and the shop's name at the head. */
  readonly tall: boolean
}

const small: Setting = { numbers: [24, 20, 17, 14], owner: 8.5, text: 8, qrSide: 50, tall: false }
const large: Setting = { numbers: [66, 54, 44, 34, 26], owner: 23, text: 17, qrSide: 128, tall: true }

/** Tags for the clock and for each separable part, one a page. */
export const tags: PaperKindPlan<TagsContents> = {
  title: ({ repairNumber }, { papers }) => papers.titleNumber(papers.titles.tags, repairNumber),
  sections: (d, contents) => contents.tags.map(tag => tagPage(d, contents, tag)),
}

const size = (style: Style, points: number): Style => ({
  ...style,
  size: points,
  leading: Math.ceil(points * 1.25 * 2) / 2,
  ink: inks.ink,
})

function tagPage(d: Desk, contents: TagsContents, tag: PaperTag): Section {
  const { sheet } = d
  const setting = sheet.size === 'label62x29' ? small : large
  const { qrSide, tall } = setting
  const code = qr(sheet, contents.qr, d.words.papers.claim.qrAlt(contents.qr), {
    right: sheet.right,
    side: qrSide,
  })
  const width = sheet.right - sheet.left - (tall ? 0 : qrSide + 10)
  const head = [
    ...(tall ? shopRow(sheet, contents.shop.name) : []),
    ...numberRow(sheet, numberText(contents, tag), setting, width),
  ]
  const room = sheet.capacity - heightOf(head) - (tall ? code.height : 0)
  const texts = fitting(d, contents, tag, setting, { width, room })
  const [running] = head.slice(-1)
  const foot = [space(Math.max(0, room - heightOf(texts))), code]
  return {
    fresh: true,
    ...(running ? { running } : {}),
    blocks: tall ? [...head, ...texts, ...foot] : [...over(code, head), ...texts],
  }
}

/** The tag as written where it leads with the repair's number, else both. */
function numberText({ repairNumber }: TagsContents, { part }: PaperTag): string {
  if (!part?.tag) return repairNumber
  return part.tag.startsWith(repairNumber) ? part.tag : `${repairNumber} · ${part.tag}`
}

const cellAt = (sheet: Sheet, tag: Cell['tag'], width: number, pieces: readonly Piece[]): Cell => ({
  tag,
  x: sheet.left,
  width,
  pieces,
})

function numberRow(sheet: Sheet, text: string, { numbers }: Setting, width: number): Block[] {
  const sizes = numbers.map(points => size(styles.title, points))
  const style = sizes.find(each => sheet.set.width(text, each) <= width) ?? sizes.at(-1) ?? styles.title
  return row(sheet, [cellAt(sheet, 'H1', width, [piece(text, style)])])
}

const shopRow = (sheet: Sheet, name: string): Block[] =>
  row(sheet, [cellAt(sheet, 'P', sheet.right - sheet.left, [piece(name, styles.strong)])], {
    below: 4,
    ruleBelow: { kind: 'line', from: sheet.left, to: sheet.right },
  })

/** Owner and what it is, a little smaller where they would not fit; what fits not even then goes on over the next label. */
function fitting(
  d: Desk,
  contents: TagsContents,
  tag: PaperTag,
  { owner, text, tall }: Setting,
  { width, room }: { width: number; room: number },
): Block[] {
  const what = whatItIs(d, contents, tag)
  const laid = [1, 0.85, 0.72].map(scale => {
    const pieces = [
      piece(contents.owner.name, size(styles.strong, owner * scale)),
      ...what.map(said => piece(said, size(styles.body, text * scale))),
    ]
    return row(d.sheet, [cellAt(d.sheet, 'P', width, pieces)], { above: tall ? 10 : 1 })
  })
  return laid.find(blocks => heightOf(blocks) <= room) ?? laid.at(-1) ?? []
}

function whatItIs(d: Desk, { clock }: TagsContents, { part }: PaperTag): string[] {
  const { marks: _marks, ...told } = clock
  // What else was written of the clock is on its card; the tag has to stay one label.
  if (!part) return [clockLine(d, clock), clockMarks(d, told)]
  const { tag: _, ...thing } = part
  return [sentence(thingText(d, thing)), d.words.papers.tags.of(said(d.words.forms, clock.form))]
}

/** The code beside the first block, taking no room of its own. */
function over(code: Block, [first, ...rest]: readonly Block[]): Block[] {
  if (!first) return [code]
  return [
    {
      ...first,
      draw: y => {
        first.draw(y)
        code.draw(y)
      },
    },
    ...rest,
  ]
}
