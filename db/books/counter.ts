import { and, eq, ne } from 'drizzle-orm'
import { cautionsFor } from '../../core/cautions/cautions.ts'
import { gather } from '../../core/checked.ts'
import type { ClaimCheckContents } from '../../core/papers/contents.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type {
  Belonging,
  Component,
  Custody,
  EarlierRepair,
  Finish,
  Grade,
  Position,
  SpringState,
  View,
} from '../../core/vocabulary/intake.ts'
import type { MessageAbout, Scope, Way } from '../../core/vocabulary/work.ts'
import { accepted, amountIn } from '../checked-in.ts'
import { dropDraft } from '../drafts.ts'
import { type RepairRow, repairInShop, settle } from '../facts.ts'
import { currentOwnerId, findRepair } from '../find-entries.ts'
import { dayOfDoing, issue, paperHead } from '../issue.ts'
import type { Write } from '../ledger.ts'
import { nextNumber } from '../numbering.ts'
import { known, refuse } from '../refusal.ts'
import { belongings, conditionNotes, conditionPins, messages, owners, repairs } from '../schema/index.ts'
import { readSettings } from '../settings.ts'
import { type Doing, verb } from '../verb.ts'
import { coverOf } from '../warranty-cover.ts'
import { attachOne } from './photographs.ts'
import { type ClockEntry, clockRow, enterClock, enterOwner, type NewOwner, ownerRow } from './register.ts'

/** One component as seen, with the places pinned on the outline drawing (0…1 from the left and from the top). */
export interface ConditionEntry {
  readonly component: Component
  readonly finish: Finish | ''
  readonly grade: Grade
  readonly earlierRepair: EarlierRepair | ''
  readonly remark: string
  readonly pins: readonly { view: View; x: number; y: number }[]
  /** Hashes of kept photographs that show it. */
  readonly photographs: readonly string[]
}

/** One separable thing and who has it. */
export interface BelongingEntry {
  readonly item: Belonging
  readonly position: Position | ''
  readonly description: string
  readonly count: number
  readonly custody: Custody
  readonly tag: string
}

/** Everything recorded when a clock comes over the counter. */
export interface TakeIn {
  readonly owner: { readonly id: number } | NewOwner
  readonly clock: { readonly id: number } | ClockEntry
  readonly fault: string
  readonly scope: Scope
  /** The earlier repair this one comes back from. */
  readonly comebackOf: number | null
  /** The shop says this fault falls under that repair's warranty. */
  readonly covered: boolean
  readonly estimateOnly: boolean
  readonly springs: SpringState
  readonly keyWith: Custody
  readonly agreedWords: string
  /** What was said of the cost, in major units. */
  readonly fee: string | null
  readonly low: string | null
  readonly high: string | null
  readonly estimatedOn: string | null
  readonly signedInBy: string
  /** The draft this was typed as, which is done with; '' where there was none. */
  readonly draft: string
  readonly condition: readonly ConditionEntry[]
  /** Hashes of kept photographs of the whole clock. */
  readonly photographs: readonly string[]
  readonly belongings: readonly BelongingEntry[]
}

/** Resolves the clock and refuses one that is another's or that already stands in the shop. */
function clockFor(tx: Write, input: TakeIn, ownerId: number, at: string): number {
  if (!('id' in input.clock)) return enterClock(tx, input.clock, ownerId, at)
  const { id } = clockRow(tx, input.clock.id, 'clock.id')
  const holder = currentOwnerId(tx, id)
  if (holder !== undefined && holder !== ownerId) {
    const name = tx.select({ name: owners.name }).from(owners).where(eq(owners.id, holder)).get()?.name ?? ''
    refuse('clock.otherOwner', 'clock.id', { owner: name })
  }
  const here = tx
    .select({ number: repairs.number })
    .from(repairs)
    .where(and(eq(repairs.clockId, id), ne(repairs.stage, 'collected')))
    .get()
  if (here) refuse('clock.inShop', 'clock.id', { number: here.number })
  return id
}

function comebackFacts(tx: Write, input: TakeIn, clockId: number, onDate: string) {
  if (input.comebackOf === null) return { comebackOfId: null, covered: false }
  const earlier = known(
    tx.select().from(repairs).where(eq(repairs.id, input.comebackOf)).get(),
    'repair.unknown',
    'comebackOf',
  )
  if (earlier.clockId !== clockId) refuse('comeback.otherClock', 'comebackOf', { number: earlier.number })
  if (input.covered && !coverOf(tx, earlier, onDate)?.covered)
    refuse('comeback.notCovered', 'covered', { number: earlier.number })
  return { comebackOfId: earlier.id, covered: input.covered }
}

/** Photographs taken at the counter, of the whole clock or of what one note says. */
function showIntake(
  tx: Write,
  repairId: number,
  noteId: number | null,
  shown: readonly string[],
  at: string,
  field: string,
) {
  for (const [i, hash] of [...new Set(shown)].entries())
    attachOne(tx, { hash, repairId, noteId, moment: 'intake', remark: '' }, at, `${field}photographs[${i}]`)
}

function noteOne(tx: Write, repairId: number, entry: ConditionEntry, at: string, field = ''): number {
  const { pins, photographs, ...note } = entry
  const { id } = tx
    .insert(conditionNotes)
    .values({ repairId, ...note, notedAt: at })
    .returning()
    .get()
  for (const pin of pins)
    tx.insert(conditionPins)
      .values({ noteId: id, ...pin })
      .run()
  showIntake(tx, repairId, id, photographs, at, field)
  return id
}

/** A, B, … Z, AA: the letter of a tag. */
const tagLetter = (index: number): string =>
  (index >= 26 ? String.fromCharCode(64 + Math.floor(index / 26)) : '') +
  String.fromCharCode(65 + (index % 26))

/** What was received gets a tag of its own where none was written, so that no part is without one. */
const tagged = (entries: readonly BelongingEntry[], number: number): BelongingEntry[] => {
  let next = 0
  return entries.map(entry =>
    entry.custody === 'received' && entry.tag === ''
      ? { ...entry, tag: `${number}-${tagLetter(next++)}` }
      : entry,
  )
}

function saidOfCost(settings: Settings, input: TakeIn): ClaimCheckContents['estimate'] {
  const said = accepted(
    gather({
      fee: amountIn(settings, input.fee, 'fee'),
      low: amountIn(settings, input.low, 'low'),
      high: amountIn(settings, input.high, 'high'),
    }),
  )
  if (said.low !== null && said.high !== null && said.high < said.low) refuse('estimate.highBelowLow', 'high')
  return {
    ...(said.fee === null ? {} : { fee: said.fee, feeCredited: true }),
    ...(said.low === null ? {} : { low: said.low }),
    ...(said.high === null ? {} : { high: said.high }),
  }
}

function issueClaimCheck(tx: Write, doing: Doing, settings: Settings, repair: RepairRow, input: TakeIn) {
  const clock = clockRow(tx, repair.clockId)
  const contents: Omit<ClaimCheckContents, 'number'> = {
    ...paperHead(tx, settings, dayOfDoing(doing, settings), { ownerId: repair.ownerId, repair }),
    kind: 'claim-check',
    fault: input.fault,
    condition: input.condition.map(({ component, finish, grade, remark }) => ({
      component,
      grade,
      ...(finish ? { finish } : {}),
      ...(remark ? { remark } : {}),
    })),
    earlierRepairs: [
      ...new Set(input.condition.flatMap(({ earlierRepair }) => (earlierRepair ? [earlierRepair] : []))),
    ],
    springs: input.springs,
    belongings: tx
      .select()
      .from(belongings)
      .where(eq(belongings.repairId, repair.id))
      .all()
      .map(({ item, position, count, custody, tag, description }) => ({
        item,
        count,
        custody,
        ...(position ? { position } : {}),
        ...(tag ? { tag } : {}),
        ...(description ? { description } : {}),
      })),
    ...(input.estimatedOn ? { estimatedOn: input.estimatedOn } : {}),
    estimate: saidOfCost(settings, input),
    ...(input.signedInBy ? { signedIn: { name: input.signedInBy, at: doing.at } } : {}),
    cautions: cautionsFor(clock),
    qr: `countwheel:${repair.number}`,
  }
  return issue(tx, doing, {
    contents,
    ownerId: repair.ownerId,
    repairId: repair.id,
    number: String(repair.number),
  })
}

/**
 * Takes a clock in: owner and clock entered where they are new, the repair numbered, condition and belongings on record, the
 * claim check issued. Refuses a clock that is another's or already in the shop.
 */
export const takeIn = verb('counter.takeIn', (tx, input: TakeIn, doing) => {
  const settings = readSettings(tx)
  const ownerId =
    'id' in input.owner
      ? ownerRow(tx, input.owner.id, 'owner.id').id
      : enterOwner(tx, input.owner, doing.at, 'owner.')
  const clockId = clockFor(tx, input, ownerId, doing.at)
  const repair = tx
    .insert(repairs)
    .values({
      number: nextNumber(tx, 'repair'),
      clockId,
      ownerId,
      takenInAt: doing.at,
      takenInBy: doing.personId,
      fault: input.fault,
      scope: input.scope,
      ...comebackFacts(tx, input, clockId, dayOfDoing(doing, settings)),
      estimateOnly: input.estimateOnly,
      springs: input.springs,
      keyWith: input.keyWith,
      agreedWords: input.agreedWords,
      estimatedOn: input.estimatedOn,
      signedInBy: input.signedInBy,
      stageSince: doing.at,
    })
    .returning()
    .get()
  for (const [i, entry] of input.condition.entries())
    noteOne(tx, repair.id, entry, doing.at, `condition[${i}].`)
  showIntake(tx, repair.id, null, input.photographs, doing.at, '')
  for (const entry of tagged(input.belongings, repair.number))
    tx.insert(belongings)
      .values({ repairId: repair.id, ...entry })
      .run()
  const claimCheck = issueClaimCheck(tx, doing, settings, repair, input)
  if (input.draft) dropDraft(tx, input.draft)
  findRepair(tx, repair.id)
  settle(tx, repair.id, doing.at)
  return {
    subject: { kind: 'repair', id: repair.id },
    result: { id: repair.id, number: repair.number, ownerId, clockId, claimCheckId: claimCheck.id },
  }
})

/** Adds to the condition report, as when something is seen only after the owner has left. */
export const noteCondition = verb(
  'counter.noteCondition',
  (tx, input: ConditionEntry & { repairId: number }, doing) => {
    const { repairId, ...entry } = input
    repairInShop(tx, repairId)
    const id = noteOne(tx, repairId, entry, doing.at)
    return { subject: { kind: 'repair', id: repairId }, result: { id } }
  },
)

/** Strikes out a condition note; it stays legible with its reason. */
export const strikeNote = verb('counter.strikeNote', (tx, input: { noteId: number; reason: string }) => {
  const note = known(
    tx.select().from(conditionNotes).where(eq(conditionNotes.id, input.noteId)).get(),
    'note.unknown',
    'noteId',
  )
  if (note.struckReason) refuse('entry.struck', 'noteId')
  tx.update(conditionNotes).set({ struckReason: input.reason }).where(eq(conditionNotes.id, note.id)).run()
  return { subject: { kind: 'repair', id: note.repairId }, result: { id: note.id } }
})

/** Says a new estimated date. */
export const estimateDate = verb(
  'counter.estimateDate',
  (tx, input: { repairId: number; estimatedOn: string | null }) => {
    repairInShop(tx, input.repairId)
    tx.update(repairs).set({ estimatedOn: input.estimatedOn }).where(eq(repairs.id, input.repairId)).run()
    return { subject: { kind: 'repair', id: input.repairId }, result: { id: input.repairId } }
  },
)

/** What an owner was told, as it was said or sent. */
export interface Message {
  readonly repairId: number
  readonly about: MessageAbout
  readonly way: Way
  readonly text: string
}

/** Records what an owner was told; that a clock is ready is also kept beside the repair. */
export const tellOwner = verb('counter.tellOwner', (tx, input: Message, doing) => {
  repairInShop(tx, input.repairId)
  const { id } = tx
    .insert(messages)
    .values({ ...input, at: doing.at, personId: doing.personId })
    .returning()
    .get()
  if (input.about === 'ready')
    tx.update(repairs).set({ toldAt: doing.at }).where(eq(repairs.id, input.repairId)).run()
  return { subject: { kind: 'repair', id: input.repairId }, result: { id } }
})
