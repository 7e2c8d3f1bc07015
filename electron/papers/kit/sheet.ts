import PDFDocument from 'pdfkit'
import { type PaperSize, paperSizes } from '../../../core/papers/sizes.ts'
import { registerFaces } from './faces.ts'
import { type Layout, layouts } from './layouts.ts'
import { inks, styles } from './styles.ts'
import { type Typesetter, typesetter } from './typesetter.ts'

/** What the document says of itself. */
export interface SheetFacts {
  readonly size: PaperSize
  readonly title: string
  readonly author: string
  /** What kind of copy it is, where it is one. */
  readonly subject?: string
  readonly language: string
  /** Civil date; it stands for the time of making, so that equal content gives equal bytes. */
  readonly issuedOn: string
}

/** What stands on every page outside the paper's own content. */
export interface Running {
  /** At the head of every page but the first. */
  readonly continued: string
  /** At the foot, left. */
  readonly foot: string
  /** At the foot, right: pages are counted from 1. */
  readonly pageOf: (page: number, pages: number) => string
}

/** Attributes of an element for readers that cannot see the page. */
export interface ElementOptions {
  readonly alt?: string
  readonly scope?: 'Column' | 'Row'
}

/** A stretch of a page along which the margin rule is drawn. */
interface Ruled {
  readonly page: number
  readonly from: number
  to: number
}

/** Pages with a margin column, a margin rule and a body; a cursor that goes down them; a tree of tagged elements. */
export class Sheet {
  readonly document: PDFKit.PDFDocument
  readonly set: Typesetter
  readonly size: PaperSize
  /** Horizontal places in points: margin column, its rule, and the body between `body` and `right`. */
  readonly left: number
  readonly rule: number
  readonly body: number
  readonly right: number
  readonly bottom: number
  /** Where the next block begins. */
  y: number
  private readonly open: PDFKit.PDFStructureElement[]
  private readonly ruled: Ruled[] = []
  private page = 0
  private repeating = false
  private readonly layout: Layout
  private readonly bytes: Promise<Buffer>

  constructor({ size, title, author, subject, language, issuedOn }: SheetFacts) {
    const { width, height } = paperSizes[size]
    const made = new Date(`${issuedOn}T00:00:00Z`)
    this.document = new PDFDocument({
      size: [width, height],
      margin: 0,
      font: '',
      pdfVersion: '1.7',
      tagged: true,
      lang: language,
      displayTitle: true,
      bufferPages: true,
      info: {
        Title: title,
        Author: author,
        ...(subject ? { Subject: subject } : {}),
        Creator: 'Countwheel',
        CreationDate: made,
        ModDate: made,
      },
    })
    this.bytes = collected(this.document)
    registerFaces(this.document)
    this.set = typesetter(this.document, layouts[size].typeScale)
    const { side, top, foot, column, gutter } = layouts[size]
    this.size = size
    this.layout = layouts[size]
    this.left = side
    this.rule = side + column
    this.body = this.rule + gutter
    this.right = width - side
    this.bottom = height - foot
    this.y = top
    const root = this.document.struct('Document')
    this.document.addStructure(root)
    this.open = [root]
  }

  /** Width of the body in points. */
  get width(): number {
    return this.right - this.body
  }

  /** Height that a page after the first offers. */
  get capacity(): number {
    return this.bottom - this.layout.continuedTop
  }

  /** True where things that stand side by side on a sheet stand one under the other. */
  get narrow(): boolean {
    return this.width < 300
  }

  /** True while nothing has been laid on the present page. */
  get blank(): boolean {
    return this.y === (this.page === 0 ? this.layout.top : this.layout.continuedTop)
  }

  /** Begins a new page. */
  turn(): void {
    this.document.addPage()
    this.page += 1
    this.y = this.layout.continuedTop
  }

  /** Runs `draw` inside a new element of the tree, such as a table or one of its rows. */
  within(tag: string, draw: () => void): void {
    const element = this.begin(tag, {})
    if (element) this.open.push(element)
    draw()
    if (element) this.open.pop()
    element?.end()
  }

  /** Draws content as one element: what a reader hears. An element without anything drawn keeps its place in the tree. */
  say(tag: string, draw: (() => void) | null, options: ElementOptions = {}): void {
    const element = this.begin(tag, options)
    if (element && draw) element.add(draw)
    else draw?.()
    element?.end()
  }

  /** Draws what a reader need not hear: rules, ornaments. */
  decorate(draw: () => void): void {
    if (!this.repeating) this.document.markContent('Artifact', { type: 'Layout' })
    draw()
    if (!this.repeating) this.document.endMarkedContent()
  }

  /** Draws again what was already said on an earlier page. */
  repeat(draw: () => void): void {
    this.decorate(() => {
      this.repeating = true
      draw()
      this.repeating = false
    })
  }

  /** Marks a stretch of the present page to get the margin rule. */
  ruleBeside(from: number, to: number): void {
    if (this.layout.column === 0) return
    const last = this.ruled.at(-1)
    if (last && last.page === this.page && Math.abs(last.to - from) < 0.5) last.to = to
    else this.ruled.push({ page: this.page, from, to })
  }

  /** Adds rules, running lines and page numbers, and returns the finished file. */
  finish(running: Running): Promise<Buffer> {
    for (let page = 0; page <= this.page; page++) {
      this.document.switchToPage(page)
      this.decorate(() => {
        this.drawMarginRules(page)
        if (this.layout.running) this.drawRunning(running, page)
      })
    }
    this.document.end()
    return this.bytes
  }

  private begin(tag: string, options: ElementOptions): PDFKit.PDFStructureElement | undefined {
    if (this.repeating) return undefined
    const element = this.document.struct(tag, options)
    this.open.at(-1)?.add(element)
    return element
  }

  private drawRunning({ continued, foot, pageOf }: Running, page: number): void {
    const { continuedTop, footLine } = this.layout
    if (page > 0) this.line(continued, continuedTop - 22, 'left')
    this.line(foot, this.bottom + footLine, 'left')
    this.line(pageOf(page + 1, this.page + 1), this.bottom + footLine, 'right')
  }

  private line(text: string, y: number, side: 'left' | 'right'): void {
    const [set] = this.set.lines(text, styles.foot, (this.right - this.left) * (side === 'left' ? 0.8 : 0.2))
    if (set) this.set.draw(set, side === 'left' ? this.left : this.right - set.width, y)
  }

  /** The ledger's margin: two fine rules. */
  private drawMarginRules(page: number): void {
    this.document.lineWidth(0.6).strokeColor(inks.margin)
    for (const { from, to } of this.ruled.filter(each => each.page === page)) {
      for (const x of [this.rule, this.rule + 2.2]) this.document.moveTo(x, from).lineTo(x, to).stroke()
    }
  }
}

function collected(document: PDFKit.PDFDocument): Promise<Buffer> {
  const chunks: Buffer[] = []
  return new Promise((resolve, reject) => {
    document.on('data', (chunk: Buffer) => chunks.push(chunk))
    document.on('end', () => resolve(Buffer.concat(chunks)))
    document.on('error', reject)
  })
}
