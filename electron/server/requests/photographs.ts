import { zValidator } from '@hono/zod-validator'
import { Hono } from 'hono'
import { z } from 'zod'
import { mediaTypes } from '../../../core/photograph/picture.ts'
import { photographMoments } from '../../../core/vocabulary/intake.ts'
import { attach, keep, keepBytes, strike } from '../../../db/books/photographs.ts'
import { readPhotograph, soundPhotograph } from '../../../db/file/photograph-files.ts'
import { known, refuse } from '../../../db/rows/refusal.ts'
import { photographRow } from '../../../db/rules/photographs.ts'
import { longestBody } from '../hosts/limits.ts'
import { refuseInput } from '../problems.ts'
import { body } from './body.ts'
import { count, id, keyOf, oneOf, optional, required } from './fields.ts'
import { type Env, perform, refuseByClock } from './perform.ts'

/** What a photograph is known by: the SHA-256 of its bytes. */
export const photographHash = z.string().regex(/^[0-9a-f]{64}$/)

const keepInput = z.strictObject({
  hash: photographHash,
  mediaType: keyOf(mediaTypes),
  bytes: count(1, longestBody.photograph),
})

const attachInput = z.strictObject({
  hash: photographHash,
  repairId: id,
  noteId: id.nullable().default(null),
  moment: oneOf(photographMoments),
  remark: optional(400),
})

/** Refuses to put on record what does not stand beside the ledger as its hash and length say. */
function refuseMissing(ledgerFile: string, file: z.output<typeof keepInput>): void {
  const bytes = soundPhotograph(ledgerFile, file)
  if (bytes?.length !== file.bytes) refuse('photograph.missing', 'hash')
}

/** Acts on photographs. PUT takes the bytes themselves; `keep` only records bytes that stand beside the ledger, as a day file does. */
export const photographActs = new Hono<Env>()
  .put('/', async c => {
    const bytes = new Uint8Array(await c.req.arrayBuffer())
    refuseByClock(c.var)
    return c.json(keepBytes(c.var.ledger, c.var.doing, bytes))
  })
  .post('/keep', body(keepInput), c => {
    const input = c.req.valid('json')
    // A day file's photographs may be put beside the ledger after it was played; a page sends the bytes themselves.
    if (!c.var.played) refuseMissing(c.var.ledger.file, input)
    return perform(c, keep, input)
  })
  .post('/attach', body(attachInput), c => perform(c, attach, c.req.valid('json')))
  .post('/strike', body(z.strictObject({ useId: id, reason: required(400) })), c =>
    perform(c, strike, c.req.valid('json')),
  )

/** The photographs themselves. The same address always means the same bytes, so a browser may keep them for good. */
export const photographFiles = new Hono<Env>().get(
  '/:hash',
  zValidator('param', z.object({ hash: photographHash }), refuseInput),
  c => {
    const { ledger } = c.var
    const row = known(photographRow(ledger.read, c.req.valid('param').hash), 'photograph.unknown', 'hash')
    const bytes = known(readPhotograph(ledger.file, row), 'photographFile.unknown', 'hash')
    return c.body(bytes, 200, {
      'Content-Type': row.mediaType,
      'Content-Disposition': 'inline',
      'Content-Security-Policy': "default-src 'none'",
      'X-Content-Type-Options': 'nosniff',
      'Cache-Control': 'private, max-age=31536000, immutable',
    })
  },
)
