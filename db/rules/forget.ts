import { desc, inArray } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { minorText } from '../../core/money/minor.ts'
import { keptUntil } from '../../core/owner/kept-until.ts'
import { type Problem, problem } from '../../core/problems.ts'
import { isInShop } from '../../core/standing/stages.ts'
import type { Read } from '../file/ledger.ts'
import { type Forgotten, forgottenOf } from '../rows/forgotten.ts'
import { withMerged } from '../rows/merged-owners.ts'
import { readSettings } from '../rows/settings.ts'
import { documents, forgottenOwners, handedPapers, photographUses, repairs } from '../schema/index.ts'
import { accountHeld } from './balance.ts'

/** What keeps an owner from being forgotten now: a clock in the shop, money that is open either way. */
export function forgetProblems(read: Read, { owners, repairs: ids }: Forgotten): Problem[] {
  const open = read
    .select({ number: repairs.number, due: repairs.dueMinor, stage: repairs.stage })
    .from(repairs)
    .where(inArray(repairs.id, [...ids]))
    .all()
  const { currency } = readSettings(read).place
  const held = owners.map(id => accountHeld(read, id)).find(amount => amount !== 0)
  return [
    ...open
      .filter(({ stage }) => isInShop(stage))
      .map(({ number }) => problem('forget.clockHere', 'ownerId', { number })),
    ...open
      .filter(({ due }) => due !== 0)
      .map(({ number, due }) =>
        problem('forget.moneyOpen', 'ownerId', { number, due: minorText(due, currency) }),
      ),
    ...(held === undefined ? [] : [problem('forget.held', 'ownerId', { held: minorText(held, currency) })]),
  ]
}

/** What forgetting an owner would take out, what would stay and until when, and what stands against it. */
export function forgetView(read: Read, ownerId: number) {
  const about = forgottenOf(read, withMerged(read, ownerId))
  const { privacy, place } = readSettings(read)
  const count = (rows: readonly unknown[]) => rows.length
  const papers = read
    .select({
      id: documents.id,
      kind: documents.kind,
      number: documents.number,
      issuedOn: documents.issuedOn,
    })
    .from(documents)
    .where(inArray(documents.ownerId, [...about.owners]))
    .orderBy(desc(documents.id))
    .all()
  const done = read
    .select({ at: forgottenOwners.at })
    .from(forgottenOwners)
    .where(inArray(forgottenOwners.id, [...about.owners]))
    .get()
  return {
    problems: forgetProblems(read, about),
    forgottenOn: done ? civilDateOf(done.at, place.timeZone) : null,
    repairs: about.repairs.length,
    photographs: count(
      read
        .selectDistinct({ hash: photographUses.hash })
        .from(photographUses)
        .where(inArray(photographUses.repairId, [...about.repairs]))
        .all(),
    ),
    handedPapers: count(
      read
        .select({ id: handedPapers.id })
        .from(handedPapers)
        .where(inArray(handedPapers.ownerId, [...about.owners]))
        .all(),
    ),
    kept: papers.map(paper => ({ ...paper, until: keptUntil(paper.issuedOn, privacy.keepPapersYears) })),
  }
}
