import { zValidator } from '@hono/zod-validator'
import { type Context, Hono } from 'hono'
import { z } from 'zod'
import { type AnyKind, workingKinds } from '../../../core/papers/kinds.ts'
import { paperSizes, usualSize } from '../../../core/papers/sizes.ts'
import type { AnyContents } from '../../../core/papers/working.ts'
import { en } from '../../../core/words/en/index.ts'
import { handOut } from '../../../db/books/papers.ts'
import { fitting } from '../../../db/papers/fitting.ts'
import { workingPapers } from '../../../db/papers/index.ts'
import { workingPaperView } from '../../../db/papers/working-paper.ts'
import { readSettings } from '../../../db/rows/settings.ts'
import { documentRow, frozenPaper } from '../../../db/rules/frozen-papers.ts'
import { frozenBytes } from '../../papers/frozen.ts'
import { renderPaper } from '../../papers/paper.ts'
import { photographsOf } from '../../papers/photographs.ts'
import { refuseInput, withMessages } from '../problems.ts'
import { body, query } from './body.ts'
import { civilDate, id, keyOf, number } from './fields.ts'
import { type Env, perform } from './perform.ts'

const file = z
  .string()
  .regex(/^[1-9]\d{0,15}\.pdf$/)
  .transform(name => Number.parseInt(name, 10))
const params = <T extends z.ZodRawShape>(shape: T) => zValidator('param', z.object(shape), refuseInput)
const kind = keyOf(workingKinds)
const size = keyOf(paperSizes)
const sized = query(z.object({ size: size.optional() }))
/** A paper that speaks of a period is drawn of the one asked for, or of all time. */
const days = { from: civilDate.optional(), to: civilDate.optional() }
const periodOf = ({ from, to }: { from?: string | undefined; to?: string | undefined }) =>
  from && to ? { from, to } : null

const answer = (c: Context<Env>, kind: AnyKind, name: string, pdf: Uint8Array): Response =>
  c.body(new Uint8Array(pdf), 200, {
    'Content-Type': 'application/pdf',
    'Content-Disposition': `inline; filename="${kind}-${name}.pdf"`,
    'Cache-Control': 'no-store',
  })

/** What tells the file from others of its kind: the repair's number, or the owner's or estimate's own. */
const nameOf = (contents: AnyContents, id: number): string =>
  contents.kind !== 'go-ahead' && contents.repairNumber ? contents.repairNumber : String(id)

/**
 * Papers as PDFs. Documents as they were issued and working papers as they were handed out: the bytes that were kept, or drawn from
 * what was frozen. Other working papers are drawn from the ledger as it stands.
 */
export const papers = new Hono<Env>()
  .get('/:file', params({ file }), sized, async c => {
    const { ledger } = c.var
    const row = documentRow(ledger.read, c.req.valid('param').file)
    const paper = frozenPaper(ledger.read, { sort: 'issued', id: row.id })
    const size = fitting(row.kind, c.req.valid('query').size ?? paper.size)
    return answer(c, row.kind, row.number.replace('/', '-'), await frozenBytes(ledger, paper, size))
  })
  .get('/handed/:file', params({ file }), sized, async c => {
    const { ledger } = c.var
    const paper = frozenPaper(ledger.read, { sort: 'handed', id: c.req.valid('param').file })
    const { contents, id } = paper
    const size = fitting(contents.kind, c.req.valid('query').size ?? paper.size)
    const name = `${nameOf(contents, id)}-${contents.issuedOn}`
    return answer(c, contents.kind, name, await frozenBytes(ledger, paper, size))
  })
  .get(
    '/of/:kind/:file',
    params({ kind, file }),
    query(z.object({ size: size.optional(), ...days })),
    async c => {
      const { kind, file: id } = c.req.valid('param')
      const { ledger, doing } = c.var
      const contents = workingPapers[kind](ledger.read, id, doing.at, periodOf(c.req.valid('query')))
      const usual = usualSize(kind, readSettings(ledger.read).place.paper)
      const size = fitting(kind, c.req.valid('query').size ?? usual)
      const pdf = await renderPaper(contents, { size, words: en, photographs: photographsOf(ledger) })
      return answer(c, kind, nameOf(contents, id), pdf)
    },
  )

const period = z.strictObject({ from: civilDate, to: civilDate }).nullable().default(null)
const handed = z.strictObject({ kind, id, size, period })

/** Acts on working papers. */
export const paperActs = new Hono<Env>().post('/handOut', body(handed), c =>
  perform(c, handOut, c.req.valid('json')),
)

/** The view of a working paper. It never changes anything. */
export const paperPages = new Hono<Env>().get(
  '/papers/:kind/:id',
  params({ kind, id: number }),
  query(z.object(days)),
  c => {
    const { ledger, doing } = c.var
    const { kind, id } = c.req.valid('param')
    const view = workingPaperView(ledger, kind, id, doing.at, periodOf(c.req.valid('query')))
    return c.json({ ...view, against: withMessages(view.against) })
  },
)
