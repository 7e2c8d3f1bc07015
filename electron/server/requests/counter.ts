import { Hono } from 'hono'
import { z } from 'zod'
import * as intake from '../../../core/vocabulary/intake.ts'
import { exclusions, messageAbouts, scopes, ways } from '../../../core/vocabulary/work.ts'
import { decideCover } from '../../../db/books/comeback.ts'
import { estimateDate, noteCondition, strikeNote, tellOwner } from '../../../db/books/counter.ts'
import { handOver } from '../../../db/books/hand-over.ts'
import { takeIn } from '../../../db/books/take-in.ts'
import { takeInProblems } from '../../../db/rules/take-in-problems.ts'
import { body, bodyAnd } from './body.ts'
import {
  count,
  id,
  keyOf,
  list,
  oneOf,
  openAmount,
  openDate,
  optional,
  optionalLines,
  required,
  requiredLines,
  tick,
} from './fields.ts'
import { type Env, perform } from './perform.ts'
import { photographHash } from './photographs.ts'
import { newClockFields, newOwnerFields } from './register.ts'

const blankOr = <const T extends readonly [string, ...string[]]>(codes: T) =>
  oneOf(['', ...codes] as const).default('')

const pin = z.strictObject({
  view: oneOf(intake.views),
  x: z.number().min(0).max(1),
  y: z.number().min(0).max(1),
})

/** Kept photographs that show something, by hash. */
const shown = list(photographHash, 30).default([])

const conditionFields = {
  component: oneOf(intake.components),
  finish: blankOr(intake.finishes),
  grade: oneOf(intake.grades),
  earlierRepair: blankOr(intake.earlierRepairs),
  remark: optionalLines(1000),
  pins: list(pin, 50).default([]),
  photographs: shown,
}

const belonging = z.strictObject({
  item: keyOf(intake.belongings),
  position: blankOr(intake.positions),
  description: optional(),
  count: count(1, 99).default(1),
  custody: oneOf(intake.custodies),
  tag: optional(30),
})

/** What the fault of a comeback comes from. */
const causes = list(oneOf(exclusions), exclusions.length).default([])

const decideCoverInput = z.strictObject({
  repairId: id,
  covered: z.boolean(),
  causes,
  goodwill: optional(400),
  seen: z.strictObject({ covered: z.boolean(), causes, goodwill: optional(400) }).nullable(),
})

const takeInInput = z.strictObject({
  owner: z.union([z.strictObject({ id }), z.strictObject(newOwnerFields)]),
  clock: z.union([z.strictObject({ id }), z.strictObject(newClockFields)]),
  fault: requiredLines(),
  scope: oneOf(scopes).default('service'),
  comebackOf: id.nullable().default(null),
  covered: tick,
  causes,
  estimateOnly: tick,
  springs: oneOf(intake.springStates).default('unknown'),
  agreedWords: optional(400),
  fee: openAmount,
  low: openAmount,
  high: openAmount,
  estimatedOn: openDate,
  signedInBy: optional(),
  draft: optional(64),
  condition: list(z.strictObject(conditionFields), 100).default([]),
  photographs: shown,
  belongings: list(belonging, 100).default([]),
})

const handOverInput = z.strictObject({
  repairId: id,
  toName: required(),
  authority: optional(400),
  belongings: list(z.strictObject({ id, returned: z.boolean(), reason: optional(400) }), 100).default([]),
  unpaidReason: optional(400),
  adviceGiven: z.boolean().default(true),
})

/** Acts at the counter. */
export const counter = new Hono<Env>()
  .post(
    '/takeIn',
    bodyAnd(takeInInput, ({ ledger, doing }, said) => takeInProblems(ledger.read, said, doing.at)),
    c => perform(c, takeIn, c.req.valid('json')),
  )
  .post('/noteCondition', body(z.strictObject({ repairId: id, ...conditionFields })), c =>
    perform(c, noteCondition, c.req.valid('json')),
  )
  .post('/strikeNote', body(z.strictObject({ noteId: id, reason: required(400) })), c =>
    perform(c, strikeNote, c.req.valid('json')),
  )
  .post(
    '/estimateDate',
    body(
      z.strictObject({
        repairId: id,
        estimatedOn: openDate,
        seen: z.strictObject({ estimatedOn: openDate }).nullable(),
      }),
    ),
    c => perform(c, estimateDate, c.req.valid('json')),
  )
  .post('/decideCover', body(decideCoverInput), c => perform(c, decideCover, c.req.valid('json')))
  .post(
    '/tellOwner',
    body(
      z.strictObject({ repairId: id, about: oneOf(messageAbouts), way: oneOf(ways), text: requiredLines() }),
    ),
    c => perform(c, tellOwner, c.req.valid('json')),
  )
  .post('/handOver', body(handOverInput), c => perform(c, handOver, c.req.valid('json')))
