import { Hono, type MiddlewareHandler } from 'hono'
import { z } from 'zod'
import { readHead } from '../../../db/file/head.ts'
import { knownTail } from '../../../db/file/look.ts'
import { refuse } from '../../../db/rows/refusal.ts'
import { type BringBack, type CopyLook, copiesOf, lookAtCopy } from '../../copies/restore.ts'
import { idempotencyKey } from '../idempotency-key.ts'
import { body } from './body.ts'

/** Why the ledger is not open, and whether a person may go on with it as it is. */
export interface NotOpen {
  readonly code: string
  /** What is wrong and what to do. */
  readonly message: string
  readonly mayGoOn: boolean
}

/** Whoever has the ledger in hand, open or not, and can change what stands in its place. */
export interface Desk {
  readonly file: string
  /** Null while the ledger is open. */
  notOpen(): NotOpen | null
  /** Refuses who may not bring a copy back; where the ledger is not open, nobody can be asked. */
  refuseRestoring(request: Request): void
  /** Brings a copy back and opens it; returns the folder into which what stood there was moved. */
  bringBack(asked: BringBack): Promise<string>
  /** Moves what is there into a folder of its own, whose path is returned, and begins a new ledger. */
  beginNew(): Promise<string>
  /** Opens the ledger as it is, although entries are missing or what lies beside it is not its own. */
  goOn(): Promise<void>
}

const path = z.string().trim().min(1).max(4096)
const asked = z.strictObject({ path, otherLedger: z.boolean().default(false) })

/** A ledger that is open is not begun anew, nor gone on with. */
function refuseOpen(desk: Desk): void {
  if (!desk.notOpen()) refuse('restore.open')
}

/**
 * Does what was asked last under a key only once. The ledger itself changes hands here, so what was answered cannot stand in its day
 * book: the running program remembers it. After a start anew a copy may be brought back twice, which loses nothing: what stood there is
 * moved aside each time.
 */
function rememberLast(): MiddlewareHandler {
  let last: { readonly key: string; readonly asked: string; readonly answer: Response } | undefined
  return async (c, next) => {
    const key = idempotencyKey(c.req.header('Idempotency-Key'))
    if (key === null) return next()
    const asked = `${c.req.path} ${await c.req.text()}`
    if (last?.key === key) return last.asked === asked ? last.answer.clone() : refuse('act.keyUsed')
    await next()
    if (c.res.ok) last = { key, asked, answer: c.res.clone() }
  }
}

/**
 * How far the present ledger has come. While it is open its file is not touched: a second handle on it, once closed, would drop this
 * process's locks. What is known beside it is up with the last act then.
 */
const presentTail = (desk: Desk) => (desk.notOpen() ? knownTail(desk.file) : (readHead(desk.file) ?? null))

/** Bringing a backup back, from the running program or where the ledger cannot be opened as it stands. */
export const restoreRequests = (desk: Desk) =>
  new Hono()
    .use(rememberLast())
    .get('/', c => {
      const present = presentTail(desk)
      const copies: CopyLook[] = copiesOf(desk.file).map(copy => lookAtCopy(desk.file, copy, present))
      return c.json({ ledger: desk.file, notOpen: desk.notOpen(), copies })
    })
    .post('/look', body(z.strictObject({ path })), c =>
      c.json(lookAtCopy(desk.file, c.req.valid('json').path, presentTail(desk))),
    )
    .post('/bringBack', body(asked), async c => {
      desk.refuseRestoring(c.req.raw)
      return c.json({ setAside: await desk.bringBack(c.req.valid('json')) })
    })
    .post('/beginNew', body(z.strictObject({})), async c => {
      refuseOpen(desk)
      return c.json({ setAside: await desk.beginNew() })
    })
    .post('/goOn', body(z.strictObject({})), async c => {
      refuseOpen(desk)
      await desk.goOn()
      return c.json({ open: true })
    })

/** The contract between the pages and the desk; the pages import only this type. */
export type RestoreApi = ReturnType<typeof restoreRequests>
