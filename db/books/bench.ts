import { and, eq, inArray, isNull, notInArray } from 'drizzle-orm'
import { type BenchStep, stepsFor } from '../../core/bench/steps.ts'
import type { Caution } from '../../core/cautions/cautions.ts'
import { cautionsFor } from '../../core/cautions/cautions.ts'
import { gather } from '../../core/checked.ts'
import { problem } from '../../core/problems.ts'
import type { Component } from '../../core/vocabulary/intake.ts'
import type { AsFoundMark, WaitReason, Work } from '../../core/vocabulary/work.ts'
import type { Write } from '../file/ledger.ts'
import { known, Refusal, refuse } from '../rows/refusal.ts'
import { clockRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { type VendorEntry, vendorIdFor } from '../rows/vendor.ts'
import { verb } from '../rows/verb.ts'
import { refuseOutsideBeyondLimit } from '../rules/beyond-limit.ts'
import { accepted, amountIn } from '../rules/checked-in.ts'
import { repairInShop, settle } from '../rules/facts.ts'
import { inShop } from '../rules/in-shop.ts'
import { refuseBackwards } from '../rules/moments.ts'
import { refuseForbiddenWork } from '../rules/refused-work.ts'
import { asFound, cautionsSeen, findings, outsideWork, repairs, stepsDone, waits } from '../schema/index.ts'
import { stopAllOn } from './labour.ts'

/** Records what was found at the strip; one that needs the owner's word stops its labour clock and holds it until the word comes. */
export const find = verb(
  'bench.find',
  (tx, input: { repairId: number; component: Component; text: string; needsWord: boolean }, doing) => {
    const repair = repairInShop(tx, input.repairId)
    const { id } = tx
      .insert(findings)
      .values({ ...input, at: doing.at, personId: doing.personId })
      .returning()
      .get()
    if (input.needsWord) stopAllOn(tx, repair.id, doing)
    const { stage } = settle(tx, repair.id, doing.at)
    return { subject: { kind: 'repair', id: repair.id }, result: { id, stage } }
  },
)

/** Strikes out a finding; it stays legible with its reason. */
export const strikeFinding = verb(
  'bench.strikeFinding',
  (tx, input: { findingId: number; reason: string }, doing) => {
    const row = known(
      tx.select().from(findings).where(eq(findings.id, input.findingId)).get(),
      'finding.unknown',
      'findingId',
    )
    if (row.struckReason) refuse('entry.struck', 'findingId')
    repairInShop(tx, row.repairId)
    tx.update(findings).set({ struckReason: input.reason }).where(eq(findings.id, row.id)).run()
    settle(tx, row.repairId, doing.at)
    return { subject: { kind: 'repair', id: row.repairId }, result: { id: row.id } }
  },
)

/** Writes down a mark or a position as it was found before the strip. */
export const noteAsFound = verb(
  'bench.noteAsFound',
  (tx, input: { repairId: number; mark: AsFoundMark; text: string }, doing) => {
    const repair = repairInShop(tx, input.repairId)
    const { id } = tx
      .insert(asFound)
      .values({ ...input, at: doing.at, personId: doing.personId })
      .returning()
      .get()
    return { subject: { kind: 'repair', id: repair.id }, result: { id } }
  },
)

/** Strikes out such a note; it stays legible with its reason. */
export const strikeAsFound = verb(
  'bench.strikeAsFound',
  (tx, input: { asFoundId: number; reason: string }) => {
    const row = known(
      tx.select().from(asFound).where(eq(asFound.id, input.asFoundId)).get(),
      'asFound.unknown',
      'asFoundId',
    )
    if (row.struckReason) refuse('entry.struck', 'asFoundId')
    repairInShop(tx, row.repairId)
    tx.update(asFound).set({ struckReason: input.reason }).where(eq(asFound.id, row.id)).run()
    return { subject: { kind: 'repair', id: row.repairId }, result: { id: row.id } }
  },
)

/** Records that the person acting has seen the cautions that apply to this clock and will work by them. */
export const acknowledge = verb('bench.acknowledge', (tx, input: { repairId: number }, doing) => {
  const repair = repairInShop(tx, input.repairId)
  const codes: Caution[] = cautionsFor(clockRow(tx, repair.clockId))
  for (const caution of codes)
    tx.insert(cautionsSeen)
      .values({ repairId: repair.id, caution, at: doing.at, personId: doing.personId })
      .onConflictDoNothing()
      .run()
  return { subject: { kind: 'repair', id: repair.id }, result: { id: repair.id, cautions: codes } }
})

/** Ticks a step of the service as done, or takes the tick back. */
export const tickStep = verb(
  'bench.tickStep',
  (tx, { repairId, step, done }: { repairId: number; step: BenchStep; done: boolean }, doing) => {
    const repair = repairInShop(tx, repairId)
    const isItsOwn = stepsFor(clockRow(tx, repair.clockId)).some(({ code }) => code === step)
    if (done && !isItsOwn) refuse('step.notOfThisClock', 'step')
    const tick = { done, at: doing.at, personId: doing.personId }
    tx.insert(stepsDone)
      .values({ repairId: repair.id, step, ...tick })
      .onConflictDoUpdate({ target: [stepsDone.repairId, stepsDone.step], set: tick })
      .run()
    return { subject: { kind: 'repair', id: repair.id }, result: { id: repair.id, step, done } }
  },
)

/** Says what the repair waits for from now on; a labour clock that runs on it is stopped. */
export const wait = verb(
  'bench.wait',
  (tx, input: { repairId: number; reason: WaitReason; note: string }, doing) => {
    const repair = repairInShop(tx, input.repairId)
    const open = tx
      .select({ id: waits.id })
      .from(waits)
      .where(and(eq(waits.repairId, repair.id), eq(waits.reason, input.reason), isNull(waits.untilAt)))
      .get()
    if (open) refuse('wait.open', 'reason')
    const { id } = tx
      .insert(waits)
      .values({ ...input, fromAt: doing.at })
      .returning()
      .get()
    stopAllOn(tx, repair.id, doing)
    const { stage } = settle(tx, repair.id, doing.at)
    return { subject: { kind: 'repair', id: repair.id }, result: { id, stage } }
  },
)

/** Says that a wait is over. */
export const endWait = verb('bench.endWait', (tx, input: { waitId: number }, doing) => {
  const row = known(tx.select().from(waits).where(eq(waits.id, input.waitId)).get(), 'wait.unknown', 'waitId')
  if (row.untilAt) refuse('wait.ended', 'waitId')
  refuseBackwards(row.fromAt, doing.at)
  tx.update(waits).set({ untilAt: doing.at }).where(eq(waits.id, row.id)).run()
  const { stage } = settle(tx, row.repairId, doing.at)
  return { subject: { kind: 'repair', id: row.repairId }, result: { id: row.id, stage } }
})

interface CostAndPrice {
  /** In major units; null while not known. */
  readonly cost: string | null
  readonly price: string | null
}

const moneyOf = (tx: Write, { cost, price }: CostAndPrice) => {
  const settings = readSettings(tx)
  return accepted(
    gather({ costMinor: amountIn(settings, cost, 'cost'), priceMinor: amountIn(settings, price, 'price') }),
  )
}

/** Work given out of the house. */
export interface SendOut extends VendorEntry, CostAndPrice {
  readonly repairId: number
  readonly description: string
  /** What the work is told to be; null where the description alone says it. */
  readonly work: Work | null
  readonly dueOn: string | null
}

/** Sends work out to a vendor, known or new; refused at a price that would take the bill beyond what the owner agreed to. */
export const sendOut = verb('bench.sendOut', (tx, input: SendOut, doing) => {
  const repair = repairInShop(tx, input.repairId)
  refuseForbiddenWork(tx, repair, input.work, input.work === null ? 'description' : 'work')
  const money = moneyOf(tx, input)
  const vendorId = vendorIdFor(tx, input) ?? refuse('input.required', 'vendor')
  const { description, dueOn } = input
  const { id } = tx
    .insert(outsideWork)
    .values({ repairId: repair.id, vendorId, description, dueOn, sentAt: doing.at, ...money })
    .returning()
    .get()
  if (money.priceMinor !== null) refuseOutsideBeyondLimit(tx, repair)
  return { subject: { kind: 'repair', id: repair.id }, result: { id, vendorId } }
})

/** Takes outside work back, with what it cost and what the owner pays for it where that is known now. */
export const takeBack = verb(
  'bench.takeBack',
  (tx, input: CostAndPrice & { outsideWorkId: number }, doing) => {
    const row = known(
      tx.select().from(outsideWork).where(eq(outsideWork.id, input.outsideWorkId)).get(),
      'outside.unknown',
      'outsideWorkId',
    )
    if (row.backAt) refuse('outside.back', 'outsideWorkId')
    refuseBackwards(row.sentAt, doing.at)
    const { costMinor, priceMinor } = moneyOf(tx, input)
    tx.update(outsideWork)
      .set({
        backAt: doing.at,
        costMinor: costMinor ?? row.costMinor,
        priceMinor: priceMinor ?? row.priceMinor,
      })
      .where(eq(outsideWork.id, row.id))
      .run()
    return { subject: { kind: 'repair', id: row.repairId }, result: { id: row.id } }
  },
)

/** Puts the queue in this order; repairs left out follow in the order of their dates. Comebacks stay at the head all the same. */
export const order = verb('bench.order', (tx, input: { repairIds: readonly number[] }) => {
  const { repairIds } = input
  const twice = repairIds.findIndex((id, i) => repairIds.indexOf(id) !== i)
  if (twice >= 0) throw new Refusal([problem('order.twice', `repairIds[${twice}]`)])
  for (const id of repairIds) repairInShop(tx, id)
  tx.update(repairs)
    .set({ benchOrder: null })
    .where(and(inShop, notInArray(repairs.id, [...repairIds])))
    .run()
  for (const [index, id] of repairIds.entries())
    tx.update(repairs)
      .set({ benchOrder: index + 1 })
      .where(inArray(repairs.id, [id]))
      .run()
  return { subject: { kind: 'shop', id: 1 }, result: { ordered: repairIds.length } }
})
