import { zValidator } from '@hono/zod-validator'
import { Hono } from 'hono'
import { z } from 'zod'
import { en } from '../../core/words/en/index.ts'
import { documentRow, frozenContents } from '../../db/books/accounts.ts'
import { readSettings } from '../../db/settings.ts'
import { renderPaper } from '../papers/paper.ts'
import { refuseInput } from '../problems.ts'
import { query } from './body.ts'
import { oneOf } from './fields.ts'
import type { Env } from './perform.ts'

const file = z.object({
  file: z
    .string()
    .regex(/^[1-9]\d{0,15}\.pdf$/)
    .transform(name => Number.parseInt(name, 10)),
})

/** Papers as PDFs, drawn from what was frozen when they were issued: the same bytes each time. */
export const papers = new Hono<Env>().get(
  '/:file',
  zValidator('param', file, refuseInput),
  query(z.object({ size: oneOf(['a4', 'letter']).optional() })),
  async c => {
    const { read } = c.var.ledger
    const row = documentRow(read, c.req.valid('param').file)
    const size = c.req.valid('query').size ?? readSettings(read).place.paper
    const pdf = await renderPaper(frozenContents(row), { size, words: en })
    return c.body(new Uint8Array(pdf), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${row.kind}-${row.number.replace('/', '-')}.pdf"`,
      'Cache-Control': 'no-store',
    })
  },
)
