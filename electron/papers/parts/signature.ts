import type { PaperSignature } from '../../../core/papers/contents.ts'
import type { Block } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import { inks, styles } from '../kit/styles.ts'
import { piece } from './entry.ts'
import type { Desk } from './speech.ts'

/** A line to sign on: what the signature says, and who signed when, where that is known. */
export interface SigningLine {
  readonly caption: string
  readonly signed?: PaperSignature | undefined
}

const roomToSign = 27
const gap = 22

/** Lines to sign on side by side, with room for a pen above each. */
export function signatures(d: Desk, lines: readonly SigningLine[]): Block[] {
  const { sheet } = d
  const width = (sheet.width - gap * (lines.length - 1)) / lines.length
  const places = lines.map((line, i) => ({ ...line, x: sheet.body + i * (width + gap) }))
  const names = places.map(({ x, signed }) => ({
    tag: 'P' as const,
    x,
    width,
    pieces: [piece(signedText(d, signed))],
  }))
  const captions = places.map(({ x, caption }) => ({
    tag: 'P' as const,
    x,
    width,
    pieces: [piece(caption, styles.small)],
  }))
  const [above] = row(sheet, names, {
    above: roomToSign - (lines.some(line => line.signed) ? 13 : 0),
    keep: true,
  })
  const strokes: Block = {
    height: 0,
    keep: true,
    draw: y =>
      sheet.decorate(() => {
        sheet.document.lineWidth(0.6).strokeColor(inks.soft)
        for (const { x } of places)
          sheet.document
            .moveTo(x, y)
            .lineTo(x + width, y)
            .stroke()
      }),
  }
  return [...(above ? [above] : []), strokes, ...row(sheet, captions, { above: 2, below: 3 })]
}

const signedText = ({ write }: Desk, signed: PaperSignature | undefined): string =>
  [signed?.name, signed?.at && write.instant(signed.at)].filter(Boolean).join(', ')
