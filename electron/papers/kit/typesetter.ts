import type { Face } from './faces.ts'
import { type Run, runsOf, spaced } from './runs.ts'

/** How text is set: face, size and distance of baselines in points, colour. */
export interface Style {
  readonly face: Face
  readonly size: number
  readonly leading: number
  readonly ink: string
}

/** One set line, ready to be drawn. */
export interface SetLine {
  /** With a space at the end unless a word was broken, so that a reader does not run lines together. */
  readonly runs: readonly Run[]
  readonly style: Style
  /** Width in points. */
  readonly width: number
}

/** Breaks text into lines and draws lines. */
export type Typesetter = ReturnType<typeof typesetter>

/** Where in its leading a line's baseline lies: equal for equal leading, so that neighbours of different size share it. */
const baselineShare = 0.74

/** Marks without a shape of their own would print as boxes; line ends and tabs are told apart before. */
const invisible = /[\p{Cc}\p{Cf}]/gu

/** Tabs and spaces of odd widths, which not every face has. */
const oddSpaces = /[\t\u1680\u2000-\u200a\u205f\u3000]/g

const graphemes = new Intl.Segmenter('und', { granularity: 'grapheme' })

/** Sets type on a document, every style at `scale` times its size. */
export function typesetter(document: PDFKit.PDFDocument, scale = 1) {
  const scaled = (style: Style): Style =>
    scale === 1 ? style : { ...style, size: style.size * scale, leading: style.leading * scale }

  const face = ({ face: name, size }: { face: Face; size: number }) => document.font(name).fontSize(size)

  /** Words are measured as they are drawn, with the space after them: pdfkit lays each out once and remembers it. */
  const runWidth = ({ text, face: name, rightToLeft }: Run, size: number): number => {
    const set = face({ face: name, size })
    if (rightToLeft) return set.widthOfString(text, { features: [] })
    if (text.endsWith(' ')) return set.widthOfString(text)
    return set.widthOfString(`${text} `) - set.widthOfString(' ')
  }

  const setWidth = (text: string, style: Style): number =>
    runsOf(text, style.face).reduce((sum, run) => sum + runWidth(run, style.size), 0)

  /** A word in pieces that fit; one piece when it fits whole. */
  const pieces = (word: string, style: Style, room: number): string[] => {
    if (setWidth(word, style) <= room) return [word]
    const fitting: string[] = []
    let piece = ''
    for (const { segment } of graphemes.segment(word)) {
      if (piece && setWidth(piece + segment, style) > room) {
        fitting.push(piece)
        piece = ''
      }
      piece += segment
    }
    return [...fitting, piece]
  }

  const setLine = (text: string, style: Style, whole: boolean): SetLine => {
    const runs = runsOf(text, style.face)
    return { runs: whole ? spaced(runs, style.face) : runs, style, width: setWidth(text, style) }
  }

  const paragraph = (text: string, style: Style, room: number): SetLine[] => {
    const set: SetLine[] = []
    let line = ''
    for (const word of text.split(/ +/)) {
      const longer = line ? `${line} ${word}` : word
      if (setWidth(longer, style) <= room) {
        line = longer
        continue
      }
      if (line) set.push(setLine(line, style, true))
      const broken = pieces(word, style, room)
      for (const piece of broken.slice(0, -1)) set.push(setLine(piece, style, false))
      line = broken.at(-1) ?? ''
    }
    return [...set, setLine(line, style, true)]
  }

  /** The text in lines no wider than `room` points; its own line ends are kept, a word too long is broken between letters. */
  const lines = (text: string, style: Style, room: number): SetLine[] =>
    text
      .normalize('NFC')
      .replace(oddSpaces, ' ')
      .split(/\r\n|[\r\n\u2028\u2029]/)
      .flatMap(part => paragraph(part.replace(invisible, '').trim(), scaled(style), room))

  const drawRun = (run: Run, x: number, y: number, ink: string) => {
    const mark = run.actual !== undefined ? 'Span' : run.rightToLeft ? 'ReversedChars' : undefined
    if (mark) document.markContent(mark, run.actual !== undefined ? { actual: run.actual } : undefined)
    document.fillColor(ink).text(run.text, x, y, {
      lineBreak: false,
      baseline: 'alphabetic',
      ...(run.rightToLeft ? { features: [] } : {}),
    })
    if (mark) document.endMarkedContent()
  }

  /** Draws a line with its left edge at `x` and the top of its leading at `y`. */
  const draw = (line: SetLine, x: number, y: number): void => {
    const baseline = y + line.style.leading * baselineShare
    let at = x
    for (const run of line.runs) {
      face({ face: run.face, size: line.style.size })
      drawRun(run, at, baseline, line.style.ink)
      at += runWidth(run, line.style.size)
    }
  }

  /** Width of the text on one line, in points. */
  const width = (text: string, style: Style): number => setWidth(text, scaled(style))

  return { width, lines, draw }
}
