import { covers, type Face, lenders } from './faces.ts'

/** A piece of a line that is set in one face. */
export interface Run {
  readonly face: Face
  readonly text: string
  /** Set as one piece, spaces and all, because it is written from right to left. */
  readonly rightToLeft?: true
  /** No face has this character: a box stands for it and the character is kept in the text layer. */
  readonly missing?: true
}

/** Letters every face has: what nearly every line is made of. */
const plain = /^[\x20-\x7e\xa0-\xff–—‘’“”…€−]*$/

/** Neighbouring words of one right-to-left script with the marks between them; digits stay outside, they run left to right. */
const rightToLeft =
  /(?<hebrew>[\p{Script=Hebrew}]+(?:[\s\-'’"”.,\p{M}]*[\p{Script=Hebrew}]+)*)|(?<arabic>[\p{Script=Arabic}]+(?:[\s\-'’"”.,\p{M}]*[\p{Script=Arabic}]+)*)/gu

/** The line in runs, each in a face that can draw it. */
export function runsOf(line: string, face: Face): Run[] {
  if (plain.test(line)) return [{ face, text: line }]
  const runs: Run[] = []
  let from = 0
  for (const match of line.matchAll(rightToLeft)) {
    runs.push(...leftToRight(line.slice(from, match.index), face))
    runs.push({ face: match.groups?.hebrew ? 'hebrew' : 'arabic', text: match[0], rightToLeft: true })
    from = match.index + match[0].length
  }
  return [...runs, ...leftToRight(line.slice(from), face)]
}

function leftToRight(text: string, face: Face): Run[] {
  const runs: Run[] = []
  for (const character of text) {
    const last = runs.at(-1)
    const next = runOf(character, face)
    if (last && last.face === next.face && !last.missing && !next.missing) {
      runs[runs.length - 1] = { face: last.face, text: last.text + character }
    } else runs.push(next)
  }
  return runs
}

function runOf(character: string, face: Face): Run {
  const able = [face, ...lenders[face]].find(each => covers(each, character))
  return able ? { face: able, text: character } : { face, text: character, missing: true }
}
