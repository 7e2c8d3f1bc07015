import { join } from 'node:path'
import PDFDocument from 'pdfkit'
import { assetPath } from './assets.ts'

/** The typefaces: text and figures, their strong form, headings; then the two that stand in for other scripts. */
const files = {
  text: 'SourceSans3_400Regular.ttf',
  strong: 'SourceSans3_600SemiBold.ttf',
  heading: 'SourceSerif4_600SemiBold.ttf',
  hebrew: 'NotoSansHebrew_400Regular.ttf',
  arabic: 'Vazirmatn_400Regular.ttf',
} as const

/** A typeface by its use on a paper. */
export type Face = keyof typeof files

const faces = Object.keys(files) as Face[]

/** Faces that lend a letter the given one lacks, nearest first. */
export const lenders: Record<Face, readonly Face[]> = {
  text: ['hebrew', 'arabic'],
  strong: ['hebrew', 'arabic'],
  heading: ['strong', 'hebrew', 'arabic'],
  hebrew: ['text', 'arabic'],
  arabic: ['text', 'hebrew'],
}

/** What is used of pdfkit's parsed font. */
interface Program {
  hasGlyphForCodePoint(codePoint: number): boolean
  layout(text: string): unknown
}

const parsed = new Map<Face, Program>()

/** The face parsed once for the life of the program: reading its layout tables costs more than setting a page. */
function program(face: Face): Program {
  const known = parsed.get(face)
  if (known) return known
  const probe = new PDFDocument({ autoFirstPage: false, font: join(assetPath('fonts'), files[face]) })
  const { font } = (probe as unknown as { _font: { font: Program } })._font
  parsed.set(face, font)
  return font
}

/** True when the face itself can set the text: it has every character, and its layout tables bear their combination. */
export function sets(face: Face, text: string): boolean {
  const font = program(face)
  if (![...text].every(character => font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0))) return false
  try {
    font.layout(text)
    return true
  } catch {
    // A font may lack an anchor for a rare pair of marks; its letters are then lent or boxed, and the paper still prints.
    return false
  }
}

/**
 * Makes every face known to a document under its own name. A document gets the shared tables with a glyph store of its own:
 * a shared store would remember letters of earlier papers, and equal content must give equal bytes.
 */
export function registerFaces(document: PDFKit.PDFDocument): void {
  for (const face of faces) {
    const own = Object.create(program(face), { _glyphs: { value: {}, writable: true } })
    document.registerFont(face, own)
  }
}
