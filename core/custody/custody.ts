import type { Stage } from '../standing/stages.ts'

/** Where a thing can be, in the order the list is read. */
export const whereabouts = ['counter', 'bench', 'shelf', 'by-tag', 'vendor', 'owner'] as const
/** `by-tag`: a separable part put by under its tag; `owner`: kept by the owner, never in the shop. */
export type Whereabouts = (typeof whereabouts)[number]

const ofStage: Readonly<Record<Exclude<Stage, 'collected'>, Whereabouts>> = {
  'taken-in': 'counter',
  'estimate-out': 'counter',
  'go-ahead': 'bench',
  'on-the-bench': 'bench',
  waiting: 'bench',
  'running-in': 'shelf',
  ready: 'counter',
  declined: 'counter',
}

/** Where the clock itself is by the standing of its repair; with its owner once it is collected. */
export const whereClockIs = (stage: Stage): Whereabouts => (stage === 'collected' ? 'owner' : ofStage[stage])

/** Where a separable part is by what was said of it at the counter; nowhere where there is none, or once it was given back. */
export function whereBelongingIs(
  custody: 'received' | 'kept' | 'absent',
  returnedAt: string | null,
): Whereabouts | null {
  if (custody === 'absent') return null
  return custody === 'kept' || returnedAt !== null ? 'owner' : 'by-tag'
}

const marks = /\p{Mn}/gu
const folded = (text: string): string => text.normalize('NFD').replace(marks, '').toLowerCase()

/** True when every word typed is somewhere in `text`, capitals and accents apart. */
export function saysAll(text: string, typed: string): boolean {
  const said = folded(text)
  return folded(typed)
    .split(/\s+/)
    .every(word => said.includes(word))
}
