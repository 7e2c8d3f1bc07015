import { civilDateOf } from '../../core/calendar/zone.ts'
import { repairCode } from '../../core/papers/repair-code.ts'
import type { BenchCardContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { repairView } from '../read/repair.ts'
import { repairRow } from '../rules/facts.ts'
import { belongingsOf } from './belongings.ts'
import { paperBelonging, repairAndTop } from './top.ts'

/** What goes to the bench with the clock, as the ledger has it at `at`. */
export function benchCardContents(read: Read, repairId: number, at: string): BenchCardContents {
  const { repair, top, timeZone } = repairAndTop(read, repairId, at)
  const { bench, cautions, invoice, limit } = repairView(read, repair.number, at)
  const comebackOf = repair.comebackOfId === null ? undefined : repairRow(read, repair.comebackOfId).number
  return {
    ...top,
    kind: 'bench-card',
    fault: repair.fault,
    scope: repair.scope,
    ...(comebackOf === undefined ? {} : { comebackOf: String(comebackOf) }),
    ...(repair.estimatedOn ? { estimatedOn: repair.estimatedOn } : {}),
    ...(limit.mostMinor === null ? {} : { most: limit.mostMinor }),
    cautions: cautions.map(({ code }) => code),
    agreed: invoice.agreed.map(line => line.description),
    steps: bench.steps.map(({ code, cautions, done }) => ({
      code,
      cautions,
      ...(done ? { done: true as const } : {}),
    })),
    asFound: bench.asFound
      .filter(note => note.struckReason === null)
      .map(({ mark, text }) => ({ mark, text })),
    belongings: belongingsOf(read, repair.id).map(paperBelonging),
    findings: bench.findings
      .filter(finding => finding.struckReason === null)
      .map(({ component, text, needsWord, at: foundAt }) => ({
        component,
        text,
        needsWord,
        on: civilDateOf(foundAt, timeZone),
      })),
    qr: repairCode(repair),
  }
}
