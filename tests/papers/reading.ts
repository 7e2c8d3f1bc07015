import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inflateSync } from 'node:zlib'
import { type PaperSize, usualSize } from '../../core/papers/sizes.ts'
import type { AnyContents } from '../../core/papers/working.ts'
import { en } from '../../core/words/en/index.ts'
import { renderPaper } from '../../electron/papers/paper.ts'
import type { Photographs } from '../../electron/papers/parts/speech.ts'
import { needTools, type Tool } from '../tools.ts'

needTools('pdftotext', 'pdfinfo', 'pdffonts', 'pdftoppm', 'zbarimg')

const run = (tool: Tool, args: readonly string[]): string =>
  execFileSync(tool, args, { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 })

/** The paper as the program makes it, on A4 where it comes on that and nothing else is asked. */
export const printed = (
  contents: AnyContents,
  size: PaperSize = usualSize(contents.kind, 'a4'),
  photographs: Photographs = () => undefined,
): Promise<Buffer> => renderPaper(contents, { size, words: en, photographs })

/** Runs `read` on the PDF as a file and removes the file. */
function onFile<T>(pdf: Buffer, read: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-paper-'))
  try {
    const file = join(folder, 'paper.pdf')
    writeFileSync(file, pdf)
    return read(file, folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** The text as another program reads it, white space of any width and line ends as single spaces. */
export const textOf = (pdf: Buffer): string => pagesOf(pdf).join(' ')

/** The same text page by page. */
export const pagesOf = (pdf: Buffer): string[] =>
  onFile(pdf, file => run('pdftotext', ['-layout', file, '-']))
    .split('\f')
    .slice(0, -1)
    .map(page => page.replace(/\s+/g, ' ').trim())

/** The text without any white space: what is left when words were broken over lines. */
export const lettersOf = (pdf: Buffer): string =>
  onFile(pdf, file => run('pdftotext', ['-raw', file, '-'])).replace(/\s+/g, '')

/** What pdfinfo says, by its own labels. */
export const infoOf = (pdf: Buffer): Record<string, string> =>
  Object.fromEntries(
    onFile(pdf, file => run('pdfinfo', [file]))
      .split('\n')
      .filter(line => line.includes(':'))
      .map(line => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]),
  )

/** The tree of elements with their text, as pdfinfo reads it. */
export const structureOf = (pdf: Buffer): string =>
  onFile(pdf, file => run('pdfinfo', ['-struct-text', file]))

/** Name and `emb` column of every font. */
export const fontsOf = (pdf: Buffer): { name: string; embedded: boolean }[] =>
  onFile(pdf, file => run('pdffonts', [file]))
    .split('\n')
    .slice(2)
    .filter(Boolean)
    .map(line => ({
      name: line.split(' ')[0] ?? '',
      embedded: / yes +(yes|no) +(yes|no) +\d+ +\d+$/.test(line),
    }))

/** What every QR code on a page, the first unless told, says, as read from the page's picture. */
export const codesOf = (pdf: Buffer, page = 1): string[] =>
  onFile(pdf, (file, folder) => {
    run('pdftoppm', [
      '-r',
      '150',
      '-gray',
      '-png',
      '-f',
      String(page),
      '-l',
      String(page),
      '-singlefile',
      file,
      join(folder, 'page'),
    ])
    const read = spawnSync('zbarimg', [
      '--quiet',
      '--raw',
      '-Sdisable',
      '-Sqrcode.enable',
      join(folder, 'page.png'),
    ])
    return read.stdout.toString('utf8').split('\n').filter(Boolean)
  })

/** One word and where it stands, in points from the upper left corner. */
export interface PlacedWord {
  readonly page: number
  readonly text: string
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Every word of the paper with its place. */
export function wordsOf(pdf: Buffer): PlacedWord[] {
  const boxes = onFile(pdf, file => run('pdftotext', ['-bbox', file, '-']))
  let page = 0
  return boxes.split('\n').flatMap(line => {
    if (line.includes('<page ')) page += 1
    const word = /xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">(.*)<\/word>/.exec(line)
    if (!word) return []
    const [left, top, right, bottom] = word.slice(1, 5).map(Number)
    return [
      { page, text: word[5] ?? '', left: left ?? 0, top: top ?? 0, right: right ?? 0, bottom: bottom ?? 0 },
    ]
  })
}

/** Every drawing operator of the paper's pages, in order, as the PDF names them: `l` a line, `c` a curve, `f` a filled shape. */
export function operatorsOf(pdf: Buffer): string[] {
  const streams = [
    ...pdf.toString('latin1').matchAll(/\/Filter \/FlateDecode\n>>\nstream\n([\s\S]*?)\nendstream/g),
  ]
  const texts = streams.map(([, bytes = '']) => inflateSync(Buffer.from(bytes, 'latin1')).toString('latin1'))
  return texts
    .filter(text => text.startsWith('1 0 0 -1 0 '))
    .flatMap(text => text.split('\n').map(line => line.split(' ').at(-1) ?? ''))
}

/** Words of one page that lie over one another by more than a point each way. */
export function overlapping(pdf: Buffer): string[] {
  const words = wordsOf(pdf)
  const pairs: string[] = []
  words.forEach((a, i) => {
    for (const b of words.slice(i + 1)) {
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left)
      // A box reaches from ascender to descender: neighbouring lines touch, lines printed over one another share half of it.
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
      if (a.page === b.page && across > 1 && down > (a.bottom - a.top) / 2)
        pairs.push(`${a.text} / ${b.text}`)
    }
  })
  return pairs
}
