import { useState } from 'react'
import { takesEstimate } from '../../../core/standing/stages.ts'
import type { Repair } from '../repair.ts'

/** One repair on an estimate. */
export type OnEstimate = Repair['estimates'][number]['together'][number]

/** What the owner says of one repair; '' while nothing is said yet. */
export type Said = 'go-ahead' | 'declined' | ''

/** What is typed of the owner's word on one repair. */
export interface TypedAnswer {
  readonly said: Said
  readonly limit: string
}

/** The owner's word on each repair of an estimate that it can still be recorded on, the one being looked at first. */
export function useAnswers(all: readonly OnEstimate[], ownId: number) {
  const [typed, setTyped] = useState<ReadonlyMap<number, TypedAnswer>>(new Map())
  const asked = all
    .filter(one => one.repairId === ownId || takesEstimate(one.stage))
    .toSorted((a, b) => Number(b.repairId === ownId) - Number(a.repairId === ownId))
  const of = ({ estimateId, repairId }: OnEstimate): TypedAnswer =>
    typed.get(estimateId) ?? { said: repairId === ownId ? 'go-ahead' : '', limit: '' }
  const answered = asked.filter((one, i) => i === 0 || of(one).said !== '')
  const sent = answered.map(one => {
    const { said, limit } = of(one)
    const answer: 'go-ahead' | 'declined' = said === 'declined' ? said : 'go-ahead'
    return { estimateId: one.estimateId, answer, limit: limit.trim() || null, seen: { last: one.lastWordId } }
  })
  return {
    asked,
    answered,
    of,
    set: ({ estimateId }: OnEstimate, answer: TypedAnswer) =>
      setTyped(new Map(typed).set(estimateId, answer)),
    /** Where the fields of a repair stand in the request; one that is not answered yet is not in it. */
    path: (one: OnEstimate): string => {
      const index = answered.indexOf(one)
      if (index === 0) return ''
      return index < 0 ? `unsaid[${one.estimateId}].` : `others[${index - 1}].`
    },
    sent,
  }
}
