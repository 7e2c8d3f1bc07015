import type { ReportPhotograph } from '../../../core/papers/working.ts'
import { pictureOf } from '../../../core/photograph/picture.ts'
import { type Block, beside } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { styles } from '../kit/styles.ts'
import { labelCell, piece, ruledEntry } from './entry.ts'
import type { Desk } from './speech.ts'
import { kept } from './table.ts'

const gap = 14
const tallest = 200

/** What pdfkit makes of a picture's bytes. */
interface Image {
  readonly width: number
  readonly height: number
  readonly orientation?: number
}

/** A photograph with its place in the list and, where it can be printed, the picture. */
interface Shown {
  readonly photograph: ReportPhotograph
  readonly number: number
  readonly image: Image | undefined
}

/** Photographs two side by side, scaled to their place, each with what it shows; those that cannot be printed are named. */
export function photographs(d: Desk, list: readonly ReportPhotograph[]): Block[] {
  const shown = list.map(
    (photograph, i): Shown => ({
      photograph,
      number: i + 1,
      image: imageOf(d, photograph.hash),
    }),
  )
  const printable = shown.filter(({ image }) => image)
  const pairs = Array.from({ length: Math.ceil(printable.length / 2) }, (_, i) =>
    printable.slice(2 * i, 2 * i + 2),
  )
  const say = d.words.papers.condition
  return [
    ...pairs.flatMap((pair, i) => pairBlocks(d, pair, i === 0 ? say.photographs : '')),
    ...shown
      .filter(({ image }) => !image)
      .flatMap(({ number, photograph }) =>
        ruledEntry(d.sheet, number === 1 ? say.photographs : '', [
          piece(say.missing(number, photograph.hash)),
          piece(captionText(d, photograph, number), styles.small),
        ]),
      ),
  ]
}

/** The picture, if its bytes are at hand and of a kind a PDF can carry: JPEG, and PNG that is not interlaced. */
function imageOf({ sheet, photographs: bytesOf }: Desk, hash: string): Image | undefined {
  const bytes = bytesOf(hash)
  if (!bytes || !pictureOf(bytes).ok) return undefined
  try {
    return (sheet.document as unknown as { openImage(source: Buffer): Image }).openImage(bytes)
  } catch {
    // A file that says it is a picture and cannot be taken apart is named on the paper like one that is not there.
    return undefined
  }
}

function pairBlocks(d: Desk, pair: readonly Shown[], label: string): Block[] {
  const { sheet } = d
  const width = (sheet.width - gap) / 2
  const stacks = pair.map((one, column) => stack(d, one, sheet.body + column * (width + gap), width))
  const [named] = row(sheet, [labelCell(sheet, label)], { above: 8, below: 1, keep: true })
  return [...(named ? [named] : []), beside(...stacks)]
}

function stack(d: Desk, { photograph, number, image }: Shown, x: number, width: number): Block[] {
  if (!image) return []
  const caption = captionText(d, photograph, number)
  return [
    imageBlock(d.sheet, image, { x, width, alt: caption }),
    ...kept(
      row(d.sheet, [{ tag: 'P', x, width, pieces: [piece(caption, styles.small)] }], { above: 3, below: 7 }),
    ),
  ]
}

/** Turned pictures (EXIF orientation 5 to 8) stand the other way up. */
const shape = ({ width, height, orientation = 1 }: Image) =>
  orientation > 4 ? { width: height, height: width } : { width, height }

function imageBlock(
  sheet: Sheet,
  image: Image,
  { x, width, alt }: { x: number; width: number; alt: string },
): Block {
  const own = shape(image)
  const scale = Math.min(width / own.width, tallest / own.height)
  const drawn = { width: own.width * scale, height: own.height * scale }
  return {
    height: drawn.height,
    draw: y =>
      sheet.say('Figure', () => sheet.document.image(image as unknown as string, x, y, { ...drawn }), {
        alt,
      }),
  }
}

const captionText = ({ words, write }: Desk, photograph: ReportPhotograph, number: number): string => {
  const say = words.papers.condition
  const { moment, addedOn, note, remark } = photograph
  return [say.caption(number, say.moments[moment], write.date(addedOn)), note && say.ofNote(note), remark]
    .filter(Boolean)
    .join(' · ')
}
