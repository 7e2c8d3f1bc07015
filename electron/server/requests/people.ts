import { Hono } from 'hono'
import { z } from 'zod'
import { longestInitials } from '../../../core/people/initials.ts'
import { roles } from '../../../core/people/roles.ts'
import * as book from '../../../db/books/people.ts'
import { body } from './body.ts'
import { decimal, id, list, oneOf, optional, required } from './fields.ts'
import { type Env, perform } from './perform.ts'

const about = {
  roles: list(oneOf(roles), roles.length, 1),
  initials: optional(longestInitials),
  benchHours: z.literal('').or(decimal).default(''),
}

/** What was seen of a person, who is changed by several fields at once. */
const seen = z
  .strictObject({ roles: z.string().max(40), initials: z.string().max(40), benchHours: z.string().max(40) })
  .nullable()

/** Acts on the people of the shop. */
export const peopleActs = new Hono<Env>()
  .post('/addPerson', body(z.strictObject({ name: required(80), ...about })), c =>
    perform(c, book.addPerson, c.req.valid('json')),
  )
  .post('/changePerson', body(z.strictObject({ personId: id, ...about, seen })), c =>
    perform(c, book.changePerson, c.req.valid('json')),
  )
  .post(
    '/setPersonActive',
    body(
      z.strictObject({
        personId: id,
        active: z.boolean(),
        seen: z.strictObject({ active: z.boolean() }).nullable(),
      }),
    ),
    c => perform(c, book.setPersonActive, c.req.valid('json')),
  )
