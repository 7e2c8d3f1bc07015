import type { ComponentType } from 'react'
import type { FormAct } from './act-names.ts'
import { BackToBench } from './acts/back-to-bench.tsx'
import { DecideCover } from './acts/decide-cover.tsx'
import { DeclareReady } from './acts/declare-ready.tsx'
import { EstimatedDate } from './acts/estimated-date.tsx'
import { HandOver } from './acts/hand-over.tsx'
import { Invoice } from './acts/invoice.tsx'
import { Note } from './acts/note.tsx'
import { Pay } from './acts/pay.tsx'
import { RecordWord } from './acts/record-word.tsx'
import { Refund } from './acts/refund.tsx'
import { SendEstimate } from './acts/send-estimate.tsx'
import { TellOwner } from './acts/tell-owner.tsx'
import { WriteEstimate } from './acts/write-estimate.tsx'
import { TakeBackWriteOff, WriteOff } from './acts/write-off.tsx'
import type { ActProps } from './repair.ts'

/** The form of every act that is done on the repair's own page. */
export const forms: Record<FormAct, ComponentType<ActProps>> = {
  'write-estimate': WriteEstimate,
  'send-estimate': SendEstimate,
  'record-word': RecordWord,
  'declare-ready': DeclareReady,
  'back-to-bench': BackToBench,
  invoice: Invoice,
  'hand-over': HandOver,
  pay: Pay,
  refund: Refund,
  'write-off': WriteOff,
  'take-back-write-off': TakeBackWriteOff,
  'estimated-date': EstimatedDate,
  'tell-owner': TellOwner,
  'decide-cover': DecideCover,
  note: Note,
}
