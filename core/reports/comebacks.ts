import { percentOf } from './hours.ts'

/** A repair handed over, under the name it is counted by, and whether its clock came back for it. */
export interface ComebackFact<K extends string> {
  readonly key: K
  readonly cameBack: boolean
}

/** How many of the repairs of one name came back. */
export interface ComebackRow<K extends string> {
  readonly key: K
  readonly handedOver: number
  readonly cameBack: number
  /** Of a hundred, rounded. */
  readonly percent: number
}

/** Comebacks by name, in the order of the names. */
export const comebackRates = <K extends string>(facts: readonly ComebackFact<K>[]): ComebackRow<K>[] =>
  [...Map.groupBy(facts, fact => fact.key)]
    .map(([key, rows]) => {
      const cameBack = rows.filter(row => row.cameBack).length
      return { key, handedOver: rows.length, cameBack, percent: percentOf(cameBack, rows.length) ?? 0 }
    })
    .sort((a, b) => (a.key < b.key ? -1 : 1))
