import { type Face, lenders, sets } from './faces.ts'

/** A piece of a line that is set in one face. */
export interface Run {
  readonly face: Face
  readonly text: string
  /** Set as one piece, spaces and all, because it is written from right to left. */
  readonly rightToLeft?: true
  /** What the text layer keeps where no face can draw it: `text` is then a box that stands for it. */
  readonly actual?: string
}

/** A character no face has: it is drawn as the face's own box. */
const box = '\u{10fffd}'

/** Letters every face has: what nearly every line is made of. */
const plain = /^[\x20-\x7e\xa0-\xff–—‘’“”…€−]*$/

/** Neighbouring words of one right-to-left script with the marks between them; digits stay outside, they run left to right. */
const rightToLeft =
  /(?<hebrew>\p{Script=Hebrew}+(?:[\s\-'’"”.,\p{M}]*\p{Script=Hebrew}+)*)|(?<arabic>\p{Script=Arabic}+(?:[\s\-'’"”.,\p{M}]*\p{Script=Arabic}+)*)/gu

const graphemes = new Intl.Segmenter('und', { granularity: 'grapheme' })

/** The line in runs, each in a face that can draw it. */
export function runsOf(line: string, face: Face): Run[] {
  if (plain.test(line)) return [{ face, text: line }]
  const runs: Run[] = []
  let from = 0
  for (const match of line.matchAll(rightToLeft)) {
    runs.push(...leftToRight(line.slice(from, match.index), face))
    runs.push(rightToLeftRun(match[0], match.groups?.hebrew ? 'hebrew' : 'arabic'))
    from = match.index + match[0].length
  }
  return [...runs, ...leftToRight(line.slice(from), face)]
}

/** The runs with a space after the last, so that a reader does not join the line to the next. */
export function spaced(runs: readonly Run[], face: Face): Run[] {
  const last = runs.at(-1)
  if (!last || last.rightToLeft || last.actual !== undefined) return [...runs, { face, text: ' ' }]
  return [...runs.slice(0, -1), { ...last, text: `${last.text} ` }]
}

const rightToLeftRun = (text: string, face: Face): Run =>
  sets(face, text) ? { face, text, rightToLeft: true } : { face, text: box, actual: text }

function leftToRight(text: string, face: Face): Run[] {
  const runs: Run[] = []
  for (const { segment } of graphemes.segment(text)) {
    const last = runs.at(-1)
    const next = runOf(segment, face)
    if (last && last.face === next.face && last.actual === undefined && next.actual === undefined) {
      runs[runs.length - 1] = { face: last.face, text: last.text + next.text }
    } else runs.push(next)
  }
  return runs
}

/** A letter with its marks in the nearest face that has it, composed or taken apart. */
function runOf(letter: string, face: Face): Run {
  for (const able of [face, ...lenders[face]])
    for (const text of [letter, letter.normalize('NFD')]) if (sets(able, text)) return { face: able, text }
  return { face, text: box, actual: letter }
}
