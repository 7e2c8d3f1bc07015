import { eq } from 'drizzle-orm'
import { cautionsFor } from '../../core/cautions/cautions.ts'
import type { ClaimCheckContents } from '../../core/papers/contents.ts'
import { repairCode } from '../../core/papers/repair-code.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Write } from '../file/ledger.ts'
import { dropDraft } from '../rows/drafts.ts'
import { findRepair } from '../rows/find-entries.ts'
import { nextNumber } from '../rows/numbering.ts'
import { refuseAny } from '../rows/refusal.ts'
import { clockRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { noteOne, showIntake } from '../rules/condition-notes.ts'
import { type RepairRow, settle } from '../rules/facts.ts'
import { dayOfDoing, issue, paperHead } from '../rules/issue.ts'
import { enterClock, enterOwner } from '../rules/register-entries.ts'
import type { BelongingEntry, TakeIn } from '../rules/take-in-entry.ts'
import { saidOfCost, takeInProblems } from '../rules/take-in-problems.ts'
import { belongings, repairs } from '../schema/index.ts'

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
    qr: repairCode(repair),
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
 * claim check issued. Refuses everything `takeInProblems` finds.
 */
export const takeIn = verb('counter.takeIn', (tx, input: TakeIn, doing) => {
  const settings = readSettings(tx)
  refuseAny(takeInProblems(tx, input, doing.at))
  const ownerId = 'id' in input.owner ? input.owner.id : enterOwner(tx, input.owner, doing.at, 'owner')
  const clockId =
    'id' in input.clock ? input.clock.id : enterClock(tx, input.clock, ownerId, doing.at, 'clock')
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
      comebackOfId: input.comebackOf,
      covered: input.comebackOf !== null && input.covered,
      comebackCauses: input.comebackOf === null ? [] : [...input.causes],
      estimateOnly: input.estimateOnly,
      springs: input.springs,
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
