import { encode } from 'uqr'
import type { Block } from '../kit/flow.ts'
import type { Sheet } from '../kit/sheet.ts'

/** Light modules a reader needs round the code (ISO/IEC 18004). */
const quietModules = 4

/** Right edge and width of the dark square, in points. */
interface QrPlace {
  readonly right: number
  readonly side: number
}

/**
 * A QR code whose dark square is `side` points wide and ends at `right`, with its quiet zone above and below. Neighbouring dark
 * modules of a line are one rectangle, so that no reader or printer shows seams between them.
 */
export function qr(sheet: Sheet, payload: string, alt: string, { right, side }: QrPlace): Block {
  const { data, size } = encode(payload, { ecc: 'M', border: 0 })
  const module = side / size
  const quiet = quietModules * module
  const drawModules = (y: number) => {
    data.forEach((line, i) => {
      for (const [from, count] of darkStretches(line))
        sheet.document.rect(right - side + from * module, y + i * module, count * module, module)
    })
    sheet.document.fill('#000000')
  }
  return { height: side + 2 * quiet, draw: y => sheet.say('Figure', () => drawModules(y + quiet), { alt }) }
}

/** Where dark modules begin and how many follow one another. */
function darkStretches(line: readonly boolean[]): [from: number, count: number][] {
  const stretches: [number, number][] = []
  line.forEach((dark, i) => {
    const last = stretches.at(-1)
    if (!dark) return
    if (last && last[0] + last[1] === i) last[1] += 1
    else stretches.push([i, 1])
  })
  return stretches
}
