import type { Period } from '../../core/calendar/period.ts'
import { goesHome, handOutAct, type WorkingKind, workingKinds } from '../../core/papers/kinds.ts'
import type { PaperSize } from '../../core/papers/sizes.ts'
import { hashOf } from '../file/files-beside.ts'
import { aboutPaper } from '../papers/about.ts'
import { fitting } from '../papers/fitting.ts'
import { workingPapers } from '../papers/index.ts'
import { refuse } from '../rows/refusal.ts'
import { verb } from '../rows/verb.ts'
import { handedPapers } from '../schema/index.ts'

/** A working paper that the owner is given. `id` is of what its kind is drawn of; only a statement speaks of a period. */
export interface HandOut {
  readonly kind: WorkingKind
  readonly id: number
  readonly size: PaperSize
  readonly period: Period | null
}

/** Keeps what a working paper says as it stands, for it goes home with the owner; refuses one that stays in the shop, or cannot be drawn. */
export const handOut = verb(handOutAct, (tx, { kind, id, size, period }: HandOut, doing) => {
  if (!goesHome(kind)) refuse('paper.staysHere', 'kind', { kind })
  if (period && kind !== 'statement') refuse('paper.noPeriod', 'period', { kind })
  const { repair, ownerId } = aboutPaper(tx, kind, id)
  const contents = workingPapers[kind](tx, id, doing.at, period)
  const frozen = JSON.stringify(contents)
  const handed = tx
    .insert(handedPapers)
    .values({
      kind,
      ofId: id,
      ownerId,
      repairId: repair?.id ?? null,
      handedAt: doing.at,
      handedOn: contents.issuedOn,
      personId: doing.personId,
      size: fitting(kind, size),
      contents: frozen,
      contentsHash: hashOf(Buffer.from(frozen)),
    })
    .returning({ id: handedPapers.id })
    .get()
  return { subject: { kind: workingKinds[kind].of, id }, result: { id: handed.id } }
})
