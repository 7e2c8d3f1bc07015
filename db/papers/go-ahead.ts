import { civilDateOf } from '../../core/calendar/zone.ts'
import type { GoAheadContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
import { estimateRow } from '../rules/estimate-rows.ts'
import { documentRow, frozenContents } from '../rules/frozen-papers.ts'

/** The form for the owner's word on an estimate, from what was frozen when it was sent; refuses one that was not sent. */
export function goAheadContents(read: Read, estimateId: number, at: string): GoAheadContents {
  const { documentId } = estimateRow(read, estimateId)
  if (documentId === null) refuse('estimate.notSent', 'estimateId')
  const frozen = frozenContents(documentRow(read, documentId))
  if (frozen.kind !== 'estimate') throw new Error(`document ${documentId} is not an estimate`)
  const { kind: _, number, issuedOn, ...said } = frozen
  return {
    ...said,
    kind: 'go-ahead',
    issuedOn: civilDateOf(at, said.timeZone),
    estimate: { number, issuedOn },
  }
}
