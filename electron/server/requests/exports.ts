import { Readable } from 'node:stream'
import { zValidator } from '@hono/zod-validator'
import { type Context, Hono } from 'hono'
import { z } from 'zod'
import { vcard } from '../../../core/exports/vcard.ts'
import { en } from '../../../core/words/en/index.ts'
import { ownerCards } from '../../../db/exports/cards.ts'
import { expectedDates } from '../../../db/exports/dates.ts'
import { figureNames, figureTable } from '../../../db/exports/figures.ts'
import { journal } from '../../../db/exports/journal.ts'
import type { Table } from '../../../db/exports/table.ts'
import { type TableName, tables } from '../../../db/exports/tables.ts'
import { taxTable } from '../../../db/exports/tax.ts'
import { readSettings } from '../../../db/rows/settings.ts'
import { calendar } from '../exports/calendar.ts'
import { csv } from '../exports/csv.ts'
import { refuseInput } from '../problems.ts'
import { query } from './body.ts'
import { civilDate } from './fields.ts'
import type { Env } from './perform.ts'

const exact = z
  .enum(['0', '1'])
  .optional()
  .transform(given => given === '1')
const tableFile = z.object({
  file: z
    .string()
    .transform(file => file.replace(/\.csv$/, ''))
    .pipe(z.enum(Object.keys(tables) as [TableName, ...TableName[]])),
})

const figureFile = z.object({
  name: z
    .string()
    .transform(name => name.replace(/\.csv$/, ''))
    .pipe(z.enum(figureNames)),
})

/** The headers of a file to be kept under that name. */
const kept = (name: string, type: string) => ({
  'Content-Type': type,
  'Content-Disposition': `attachment; filename="${name}"`,
  'Cache-Control': 'no-store',
})

const asCsv = (c: Context<Env>, name: string, table: Table, asked: { exact: boolean }) =>
  c.body(
    csv(table, c.var.ledger.read, asked),
    200,
    kept(`${name}.csv`, 'text/csv; charset=utf-8; header=present'),
  )

function* encoded(pieces: Iterable<string>): Generator<Uint8Array> {
  const encoder = new TextEncoder()
  for (const piece of pieces) if (piece !== '') yield encoder.encode(piece)
}

const streamed = (pieces: Iterable<string>) =>
  Readable.toWeb(Readable.from(encoded(pieces))) as ReadableStream

function* cards(c: Context<Env>): Generator<string> {
  for (const card of ownerCards(c.var.ledger.read)) yield vcard(card)
}

/** The books taken out: tables, journal, dates and address cards. They never change anything. */
export const exports = new Hono<Env>()
  .use('*', async (c, next) => {
    // Refused here while the shop is not open: a stream that has begun cannot be.
    readSettings(c.var.ledger.read)
    await next()
  })
  .get('/tax.csv', query(z.object({ from: civilDate, to: civilDate, exact })), c => {
    const { from, to, exact } = c.req.valid('query')
    return asCsv(c, `tax-${from}-${to}`, taxTable({ from, to }), { exact })
  })
  .get(
    '/figures/:name{[a-z-]+\\.csv}',
    zValidator('param', figureFile, refuseInput),
    query(z.object({ from: civilDate, to: civilDate, exact })),
    c => {
      const { from, to, exact } = c.req.valid('query')
      const { name } = c.req.valid('param')
      const table = figureTable(name, { from, to }, c.var.doing.at)
      return asCsv(c, `figures-${name}-${from}-${to}`, table, { exact })
    },
  )
  .get(
    '/:file{[a-z-]+\\.csv}',
    zValidator('param', tableFile, refuseInput),
    query(z.object({ exact })),
    c => {
      const { file } = c.req.valid('param')
      return asCsv(c, file, tables[file], c.req.valid('query'))
    },
  )
  .get('/books.journal', c =>
    c.body(streamed(journal(c.var.ledger.read)), 200, kept('books.journal', 'text/plain; charset=utf-8')),
  )
  .get('/dates.ics', c => {
    const { read } = c.var.ledger
    const text = calendar(expectedDates(read), {
      words: en.exports,
      name: readSettings(read).shop.name,
      at: c.var.doing.at,
    })
    return c.body(text, 200, kept('dates.ics', 'text/calendar; charset=utf-8'))
  })
  .get('/owners.vcf', c => c.body(streamed(cards(c)), 200, kept('owners.vcf', 'text/vcard; charset=utf-8')))
