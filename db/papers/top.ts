import { civilDateOf } from '../../core/calendar/zone.ts'
import type { PaperBelonging } from '../../core/papers/contents.ts'
import type { RepairTop } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { known } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { type RepairRow, repairRow } from '../rules/facts.ts'
import { paperHead } from '../rules/issue.ts'
import type { belongings } from '../schema/index.ts'

/** What every working paper about a repair carries, drawn at `at`. */
function repairTop(read: Read, repair: RepairRow, at: string): RepairTop {
  const settings = readSettings(read)
  const today = civilDateOf(at, settings.place.timeZone)
  const head = paperHead(read, settings, today, { ownerId: repair.ownerId, repair })
  return {
    ...head,
    clock: known(head.clock, 'clock.unknown', 'clockId'),
    repairNumber: String(repair.number),
  }
}

/** The repair and what every paper about it carries. */
export function repairAndTop(read: Read, repairId: number, at: string) {
  const repair = repairRow(read, repairId)
  return { repair, top: repairTop(read, repair, at), timeZone: readSettings(read).place.timeZone }
}

/** A belonging as papers carry it. */
export const paperBelonging = ({
  item,
  position,
  description,
  count,
  custody,
  tag,
}: typeof belongings.$inferSelect): PaperBelonging => ({
  item,
  count,
  custody,
  ...(position ? { position } : {}),
  ...(tag ? { tag } : {}),
  ...(description ? { description } : {}),
})
