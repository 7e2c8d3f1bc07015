import { zValidator } from '@hono/zod-validator'
import { type Context, Hono } from 'hono'
import { z } from 'zod'
import { fitsOn, type PaperSize, paperSizes, sizesOf, usualSize } from '../../core/papers/sizes.ts'
import type { AnyContents, AnyKind } from '../../core/papers/working.ts'
import { en } from '../../core/words/en/index.ts'
import { photographRow } from '../../db/books/photographs.ts'
import { documentRow } from '../../db/frozen-papers.ts'
import type { Ledger } from '../../db/ledger.ts'
import { workingPapers } from '../../db/papers/index.ts'
import { readPhotograph } from '../../db/photograph-files.ts'
import { refuse } from '../../db/refusal.ts'
import { readSettings } from '../../db/settings.ts'
import { issuedPaper, issuedSize } from '../papers/issued.ts'
import { renderPaper } from '../papers/paper.ts'
import { refuseInput } from '../problems.ts'
import { query } from './body.ts'
import { civilDate, keyOf } from './fields.ts'
import type { Env } from './perform.ts'

const file = z
  .string()
  .regex(/^[1-9]\d{0,15}\.pdf$/)
  .transform(name => Number.parseInt(name, 10))
const params = <T extends z.ZodRawShape>(shape: T) => zValidator('param', z.object(shape), refuseInput)
const size = keyOf(paperSizes).optional()
const sized = query(z.object({ size }))
/** A paper that speaks of a period is drawn of the one asked for, or of all time. */
const sizedOf = query(z.object({ size, from: civilDate.optional(), to: civilDate.optional() }))

/** The size, where the paper comes on it; else a refusal that names those it does come on. */
function fitting(kind: AnyKind, size: PaperSize): PaperSize {
  if (!fitsOn(kind, size)) {
    const { titles, sizes } = en.papers
    refuse('paper.size', 'size', {
      paper: titles[kind],
      size: sizes[size],
      sizes: sizesOf[kind].map(each => sizes[each]).join(', '),
    })
  }
  return size
}

/** The bytes of a photograph of this ledger; nothing where its file is not there. */
const photographsOf = (ledger: Ledger) => (hash: string) => {
  const row = photographRow(ledger.read, hash)
  const bytes = row && readPhotograph(ledger.file, row)
  return bytes && Buffer.from(bytes)
}

const answer = (c: Context<Env>, kind: AnyKind, name: string, pdf: Uint8Array): Response =>
  c.body(new Uint8Array(pdf), 200, {
    'Content-Type': 'application/pdf',
    'Content-Disposition': `inline; filename="${kind}-${name}.pdf"`,
    'Cache-Control': 'no-store',
  })

/**
 * Papers as PDFs. Documents as they were issued: the bytes that were kept, or drawn from what was frozen. Working papers are drawn
 * from the ledger as it stands.
 */
export const papers = new Hono<Env>()
  .get('/:file', params({ file }), sized, async c => {
    const { ledger } = c.var
    const row = documentRow(ledger.read, c.req.valid('param').file)
    const size = fitting(row.kind, c.req.valid('query').size ?? issuedSize(ledger.read, row))
    return answer(c, row.kind, row.number.replace('/', '-'), await issuedPaper(ledger, row, size))
  })
  .get('/of/:kind/:file', params({ kind: keyOf(workingPapers), file }), sizedOf, async c => {
    const { kind, file: id } = c.req.valid('param')
    const { ledger, doing } = c.var
    const { from, to } = c.req.valid('query')
    const period = from && to ? { from, to } : null
    const contents = workingPapers[kind](ledger.read, id, doing.at, period)
    const usual = usualSize(kind, readSettings(ledger.read).place.paper)
    const size = fitting(kind, c.req.valid('query').size ?? usual)
    const pdf = await renderPaper(contents, { size, words: en, photographs: photographsOf(ledger) })
    return answer(c, kind, nameOf(contents, id), pdf)
  })

/** What tells the file from others of its kind: the repair's number, or the owner's or estimate's own. */
const nameOf = (contents: AnyContents, id: number): string =>
  contents.kind !== 'go-ahead' && contents.repairNumber ? contents.repairNumber : String(id)
