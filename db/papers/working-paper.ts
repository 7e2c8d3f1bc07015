import { and, asc, desc, eq, inArray } from 'drizzle-orm'
import type { Period } from '../../core/calendar/period.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { goesHome, type WorkingKind, workingKinds } from '../../core/papers/kinds.ts'
import type { Ledger, Read } from '../file/ledger.ts'
import { drawnPaper } from '../rows/kept-papers.ts'
import { withMerged } from '../rows/merged-owners.ts'
import { refusalsOf } from '../rows/refusal.ts'
import { clockRow, ownerRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { estimateNumber, estimateRow } from '../rules/estimate-rows.ts'
import { handedContents } from '../rules/frozen-papers.ts'
import { runRow } from '../rules/run-log.ts'
import { handedPapers, people } from '../schema/index.ts'
import { aboutPaper } from './about.ts'
import { workingPapers } from './index.ts'

/** Every working paper ever handed out, in order. */
export const allHandedOut = (read: Read) =>
  read
    .select({ id: handedPapers.id, kind: handedPapers.kind, handedOn: handedPapers.handedOn })
    .from(handedPapers)
    .orderBy(asc(handedPapers.id))
    .all()

/** Copies handed out before, the latest first; of a paper on an owner also those of duplicates that were merged into its owner. */
function handedBefore(read: Read, kind: WorkingKind, id: number) {
  if (!goesHome(kind)) return []
  return read
    .select({ handed: handedPapers, person: people.name })
    .from(handedPapers)
    .leftJoin(people, eq(people.id, handedPapers.personId))
    .where(
      and(
        eq(handedPapers.kind, kind),
        inArray(handedPapers.ofId, workingKinds[kind].of === 'owner' ? withMerged(read, id) : [id]),
      ),
    )
    .orderBy(desc(handedPapers.id))
    .all()
}

/** One copy with what is known of its file, and of which days it speaks where it is not of all time. */
function copyView(ledger: Ledger, { handed, person }: ReturnType<typeof handedBefore>[number]) {
  const { id, handedAt, handedOn, size } = handed
  const contents = handedContents(handed)
  const period = contents.kind === 'statement' ? (contents.period ?? null) : null
  return { id, handedAt, handedOn, size, person, period, drawn: drawnPaper(ledger, { sort: 'handed', id }) }
}

/** What tells it from another of its kind on the same repair: the estimate's number, the day the run was started. */
function told(read: Read, kind: WorkingKind, id: number) {
  const of = workingKinds[kind].of
  const { timeZone } = readSettings(read).place
  return {
    estimateNumber: of === 'estimate' ? estimateNumber(read, estimateRow(read, id)) : null,
    startedOn: of === 'run-in' ? civilDateOf(runRow(read, id).startedAt, timeZone) : null,
  }
}

/**
 * A working paper: whose it is and of which clock, what stands against drawing it as the ledger stands at `at`, and the copies
 * that were handed out.
 */
export function workingPaperView(
  ledger: Ledger,
  kind: WorkingKind,
  id: number,
  at: string,
  period: Period | null,
) {
  const { read } = ledger
  const { repair, ownerId } = aboutPaper(read, kind, id)
  const { name } = ownerRow(read, ownerId)
  return {
    kind,
    ...told(read, kind, id),
    owner: { id: ownerId, name },
    repair: repair && { number: repair.number, clock: clockRow(read, repair.clockId) },
    against: refusalsOf([() => workingPapers[kind](read, id, at, period)]),
    copies: handedBefore(read, kind, id).map(row => copyView(ledger, row)),
  }
}
