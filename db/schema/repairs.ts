import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { minor } from '../../core/money/minor.ts'
import type { MediaType } from '../../core/photograph/picture.ts'
import type { Stage } from '../../core/standing/stages.ts'
import type {
  Belonging,
  Component,
  Custody,
  EarlierRepair,
  Finish,
  Grade,
  PhotographMoment,
  Position,
  SpringState,
  View,
} from '../../core/vocabulary/intake.ts'
import type { Exclusion, MessageAbout, Scope, Way } from '../../core/vocabulary/work.ts'
import { amount, code, flag, id, json, words } from './columns.ts'

export const repairs = sqliteTable('repairs', {
  id: id(),
  number: integer().notNull(),
  clockId: integer().notNull(),
  ownerId: integer().notNull(),
  takenInAt: text().notNull(),
  takenInBy: integer(),
  fault: text().notNull(),
  scope: code<Scope>(),
  comebackOfId: integer(),
  covered: flag(),
  comebackCauses: json<Exclusion[]>().notNull().default([]),
  goodwill: words(),
  estimateOnly: flag(),
  springs: code<SpringState>().default('unknown'),
  agreedWords: words(),
  estimatedOn: text(),
  signedInBy: words(),
  benchOrder: integer(),
  readyAt: text(),
  readyReason: words(),
  toldAt: text(),
  stage: code<Stage>().default('taken-in'),
  stageSince: text().notNull(),
  dueMinor: amount().notNull().default(minor(0)),
})

export const photographs = sqliteTable('photographs', {
  id: id(),
  hash: text().notNull(),
  mediaType: code<MediaType>(),
  bytes: integer().notNull(),
  addedAt: text().notNull(),
})

export const conditionNotes = sqliteTable('condition_notes', {
  id: id(),
  repairId: integer().notNull(),
  component: code<Component>(),
  finish: code<Finish | ''>().default(''),
  grade: code<Grade>(),
  earlierRepair: code<EarlierRepair | ''>().default(''),
  remark: words(),
  notedAt: text().notNull(),
  struckReason: text(),
})

export const conditionPins = sqliteTable('condition_pins', {
  id: id(),
  noteId: integer().notNull(),
  view: code<View>(),
  x: real().notNull(),
  y: real().notNull(),
})

export const photographUses = sqliteTable('photograph_uses', {
  id: id(),
  hash: text().notNull(),
  repairId: integer().notNull(),
  noteId: integer(),
  moment: code<PhotographMoment>(),
  addedAt: text().notNull(),
  remark: words(),
  struckReason: text(),
})

export const belongings = sqliteTable('belongings', {
  id: id(),
  repairId: integer().notNull(),
  item: code<Belonging>(),
  position: code<Position | ''>().default(''),
  description: words(),
  count: integer().notNull(),
  custody: code<Custody>(),
  tag: words(),
  returnedAt: text(),
  unreturnedReason: words(),
})

export const messages = sqliteTable('messages', {
  id: id(),
  repairId: integer().notNull(),
  at: text().notNull(),
  personId: integer(),
  about: code<MessageAbout>(),
  way: code<Way>(),
  text: text().notNull(),
})

export const handOvers = sqliteTable('hand_overs', {
  id: id(),
  repairId: integer().notNull(),
  at: text().notNull(),
  personId: integer(),
  toName: text().notNull(),
  authority: words(),
  unpaidReason: words(),
  adviceGiven: integer({ mode: 'boolean' }).notNull().default(true),
})
