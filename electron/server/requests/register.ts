import { Hono } from 'hono'
import { z } from 'zod'
import { beatsOf } from '../../../core/horology/beats.ts'
import * as clock from '../../../core/vocabulary/clock.ts'
import { forgetOwner } from '../../../db/books/forget.ts'
import * as book from '../../../db/books/register.ts'
import { body } from './body.ts'
import {
  count,
  id,
  keyOf,
  list,
  oneOf,
  openGrams,
  openMm,
  optional,
  optionalLines,
  required,
  saying,
  tick,
} from './fields.ts'
import { type Env, perform } from './perform.ts'

const contact = z.strictObject({
  kind: oneOf(['phone', 'e-mail']),
  value: required(),
  preferred: tick,
  asWritten: z.boolean().optional(),
})

const ownerEntry = {
  name: required(),
  address: optionalLines(500),
  country: optional(2),
  notes: optionalLines(),
}

/** An owner with contacts, as a list names them. */
export const ownerFields = { ...ownerEntry, contacts: list(contact, 20).default([]) }

/** What on record may be the same, was looked at, and is another. */
const otherThan = list(id, 200).default([])

/** A new owner. */
export const newOwnerFields = { ...ownerFields, otherThan }

/** One of a vocabulary's codes; left out, nobody has looked yet. */
const orUnknown = <const T extends readonly string[]>(codes: T) =>
  oneOf(['unknown', ...codes] as const).default('unknown')

/** A clock's beats or its train, as they are kept; '' where nobody has counted. */
const beats = optional()
  .refine(text => text === '' || beatsOf(text) !== undefined, saying('clock.beats'))
  .transform(text => beatsOf(text)?.text ?? '')

/** A clock as described at the counter. */
export const clockFields = {
  form: keyOf(clock.forms),
  maker: optional(),
  serial: optional(),
  marks: optional(400),
  trains: count(1, 3).nullable().default(null),
  power: orUnknown(clock.powers),
  duration: orUnknown(clock.durations),
  escapement: orUnknown(clock.escapements),
  strike: orUnknown(clock.strikes),
  chime: orUnknown(clock.chimes),
  chimeCorrects: tick,
  beats,
  dial: orUnknown(clock.dials),
  jewelled: tick,
  luminous: tick,
  mercury: tick,
  mains: tick,
  notes: optionalLines(),
}

/** A new clock. */
export const newClockFields = { ...clockFields, otherThan }

/** How large and heavy a clock is. */
const sizeFields = { heightMm: openMm, widthMm: openMm, depthMm: openMm, weightG: openGrams }

/** What the writer of a change has seen of the record; null where nothing was, as in older day books. */
const seen = <const T extends z.ZodRawShape>(fields: T) => z.strictObject(fields).nullable()

/** Acts on owners and clocks. */
export const register = new Hono<Env>()
  .post('/addOwner', body(z.strictObject(newOwnerFields)), c =>
    perform(c, book.addOwner, c.req.valid('json')),
  )
  .post('/changeOwner', body(z.strictObject({ ownerId: id, ...ownerEntry, seen: seen(ownerEntry) })), c =>
    perform(c, book.changeOwner, c.req.valid('json')),
  )
  .post('/addContact', body(z.strictObject({ ownerId: id, contact })), c =>
    perform(c, book.addContact, c.req.valid('json')),
  )
  .post(
    '/preferContact',
    body(z.strictObject({ contactId: id, seen: z.strictObject({ preferredId: id.nullable() }).nullable() })),
    c => perform(c, book.preferContact, c.req.valid('json')),
  )
  .post('/strikeContact', body(z.strictObject({ contactId: id, reason: required(400) })), c =>
    perform(c, book.strikeContact, c.req.valid('json')),
  )
  .post('/mergeOwners', body(z.strictObject({ ownerId: id, intoId: id })), c =>
    perform(c, book.mergeOwners, c.req.valid('json')),
  )
  .post('/forgetOwner', body(z.strictObject({ ownerId: id, reason: required(400) })), c =>
    perform(c, forgetOwner, c.req.valid('json')),
  )
  .post('/addClock', body(z.strictObject({ ownerId: id, ...newClockFields })), c =>
    perform(c, book.addClock, c.req.valid('json')),
  )
  .post('/changeClock', body(z.strictObject({ clockId: id, ...clockFields, seen: seen(clockFields) })), c =>
    perform(c, book.changeClock, c.req.valid('json')),
  )
  .post('/measureClock', body(z.strictObject({ clockId: id, ...sizeFields, seen: seen(sizeFields) })), c =>
    perform(c, book.measureClock, c.req.valid('json')),
  )
  .post('/passClock', body(z.strictObject({ clockId: id, ownerId: id, seen: seen({ ownerId: id }) })), c =>
    perform(c, book.passClock, c.req.valid('json')),
  )
