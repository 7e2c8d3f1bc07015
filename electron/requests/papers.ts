import { zValidator } from '@hono/zod-validator'
import { type Context, Hono } from 'hono'
import { z } from 'zod'
import { fitsOn, type PaperSize, paperSizes, sizesOf, usualSize } from '../../core/papers/sizes.ts'
import type { AnyContents } from '../../core/papers/working.ts'
import { en } from '../../core/words/en/index.ts'
import { documentRow, frozenContents } from '../../db/books/accounts.ts'
import { photographRow } from '../../db/books/photographs.ts'
import type { Ledger } from '../../db/ledger.ts'
import { workingPapers } from '../../db/papers/index.ts'
import { readPhotograph } from '../../db/photograph-files.ts'
import { refuse } from '../../db/refusal.ts'
import { readSettings } from '../../db/settings.ts'
import { renderPaper } from '../papers/paper.ts'
import { refuseInput } from '../problems.ts'
import { query } from './body.ts'
import { keyOf } from './fields.ts'
import type { Env } from './perform.ts'

const file = z
  .string()
  .regex(/^[1-9]\d{0,15}\.pdf$/)
  .transform(name => Number.parseInt(name, 10))
const params = <T extends z.ZodRawShape>(shape: T) => zValidator('param', z.object(shape), refuseInput)
const sized = query(z.object({ size: keyOf(paperSizes).optional() }))

/** The size asked for, or the usual one; refuses one the paper does not come on. */
function sizeFor({ read }: Ledger, { kind }: AnyContents, asked: PaperSize | undefined): PaperSize {
  const size = asked ?? usualSize(kind, readSettings(read).place.paper)
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

async function answer(
  c: Context<Env>,
  contents: AnyContents,
  asked: PaperSize | undefined,
  name: string,
): Promise<Response> {
  const { ledger } = c.var
  const size = sizeFor(ledger, contents, asked)
  const pdf = await renderPaper(contents, { size, words: en, photographs: photographsOf(ledger) })
  return c.body(new Uint8Array(pdf), 200, {
    'Content-Type': 'application/pdf',
    'Content-Disposition': `inline; filename="${contents.kind}-${name}.pdf"`,
    'Cache-Control': 'no-store',
  })
}

/**
 * Papers as PDFs. Documents are drawn from what was frozen when they were issued: the same bytes each time. Working papers are drawn
 * from the ledger as it stands.
 */
export const papers = new Hono<Env>()
  .get('/:file', params({ file }), sized, c => {
    const row = documentRow(c.var.ledger.read, c.req.valid('param').file)
    return answer(c, frozenContents(row), c.req.valid('query').size, row.number.replace('/', '-'))
  })
  .get('/of/:kind/:file', params({ kind: keyOf(workingPapers), file }), sized, c => {
    const { kind, file: id } = c.req.valid('param')
    const { ledger, doing } = c.var
    const contents = workingPapers[kind](ledger.read, id, doing.at)
    return answer(c, contents, c.req.valid('query').size, nameOf(contents, id))
  })

/** What tells the file from others of its kind: the repair's number, or the owner's or estimate's own. */
const nameOf = (contents: AnyContents, id: number): string =>
  contents.kind !== 'go-ahead' && contents.repairNumber ? contents.repairNumber : String(id)
