import { useCallback, useMemo, useRef, useState } from 'react'
import type { Minor } from '../../../core/money/minor.ts'
import type { Priced } from '../../../core/pricing/price.ts'
import { pricedTogether } from '../../../core/pricing/together.ts'
import type { TypedLine } from '../typed-line.ts'

/** What is written of one repair, as it is sent. */
export interface SectionInput {
  readonly repairId: number
  readonly supplement: boolean
  readonly lines: TypedLine[]
  readonly high: string | null
}

/** What the repairs on an estimate being written share: each says how it is read and what it comes to. */
export interface EstimateSheet {
  /** Tells what a repair comes to now; nothing while a figure in it cannot be read. */
  readonly put: (repairNumber: number, read: () => SectionInput, sums: Priced | undefined) => void
  readonly drop: (repairNumber: number) => void
  /** What is written of a repair. */
  readonly read: (repairNumber: number) => SectionInput
  /** What all come to together; nothing while one of them cannot be read. */
  readonly totalMinor: Minor | undefined
}

type Sums = ReadonlyMap<number, Priced | undefined>

/** The sheet of an estimate being written. */
export function useEstimateSheet(): EstimateSheet {
  const readers = useRef(new Map<number, () => SectionInput>())
  const [sums, setSums] = useState<Sums>(new Map())
  const put = useCallback<EstimateSheet['put']>((repairNumber, read, one) => {
    readers.current.set(repairNumber, read)
    setSums(before => {
      const same = before.has(repairNumber) && before.get(repairNumber)?.taxInclusive === one?.taxInclusive
      return same ? before : new Map(before).set(repairNumber, one)
    })
  }, [])
  const drop = useCallback((repairNumber: number) => {
    readers.current.delete(repairNumber)
    setSums(before => new Map([...before].filter(([number]) => number !== repairNumber)))
  }, [])
  const read = useCallback((repairNumber: number) => {
    const reader = readers.current.get(repairNumber)
    if (!reader) throw new Error(`nothing is written of repair ${repairNumber}`)
    return reader()
  }, [])
  return useMemo(() => ({ put, drop, read, totalMinor: totalOf(sums) }), [put, drop, read, sums])
}

function totalOf(sums: Sums): Minor | undefined {
  const parts = [...sums.values()].flatMap(one => one ?? [])
  const together = pricedTogether(parts)
  return parts.length === sums.size && together.ok ? together.value.taxInclusive : undefined
}
