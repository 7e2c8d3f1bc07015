import { asc, eq } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { documents, estimates, repairs, series } from '../schema/index.ts'
import { type Check, type Fault, fault } from './check.ts'

/** Numbers in rising order from `first` on: what is missing and what is there twice. */
function* unbroken(name: string, numbers: readonly number[], first: number): Generator<Fault> {
  let next = first
  for (const number of numbers) {
    if (number === next - 1) yield fault('number.double', { series: name, number })
    else if (number !== next) yield fault('number.gap', { series: name, from: next, to: number - 1 })
    next = number + 1
  }
}

/** The number a series stands at, against the last that was given. */
function* standsAt(read: Read, name: string, numbers: readonly number[]): Generator<Fault> {
  const last = read.select({ last: series.last }).from(series).where(eq(series.name, name)).get()?.last
  const given = numbers.at(-1)
  if (given !== undefined && last !== given)
    yield fault('number.last', { series: name, last: last ?? 0, given })
  if (given === undefined && last && name !== 'repair')
    yield fault('number.gap', { series: name, from: 1, to: last })
}

/** The numbers given in each series of papers, rising. */
function paperNumbers(read: Read): Map<string, number[]> {
  const all = new Map<string, number[]>()
  for (const { name } of read.select({ name: series.name }).from(series).all())
    if (name !== 'repair') all.set(name, [])
  const rows = read
    .select({ kind: documents.kind, sequence: documents.sequence })
    .from(documents)
    .orderBy(asc(documents.kind), asc(documents.sequence))
    .all()
  for (const { kind, sequence } of rows) {
    const numbers = all.get(kind) ?? []
    all.set(kind, numbers)
    numbers.push(sequence)
  }
  return all
}

function* versions(read: Read): Generator<Fault> {
  const rows = read
    .select({ repair: repairs.number, version: estimates.version })
    .from(estimates)
    .innerJoin(repairs, eq(repairs.id, estimates.repairId))
    .orderBy(asc(repairs.number), asc(estimates.version))
    .all()
  const byRepair = Map.groupBy(rows, row => row.repair)
  for (const [repair, own] of byRepair)
    yield* unbroken(
      `${repair}/`,
      own.map(row => row.version),
      1,
    )
}

/** Every series of papers from 1 on, the repairs from their first, the estimates of each repair: no gap and no number twice. */
export const numbers: Check = function* ({ read }) {
  let looked = 0
  for (const [kind, given] of paperNumbers(read)) {
    yield* unbroken(kind, given, 1)
    yield* standsAt(read, kind, given)
    looked += given.length
  }
  const repairNumbers = read
    .select({ number: repairs.number })
    .from(repairs)
    .orderBy(asc(repairs.number))
    .all()
    .map(row => row.number)
  yield* unbroken('repair', repairNumbers, repairNumbers[0] ?? 1)
  yield* standsAt(read, 'repair', repairNumbers)
  yield* versions(read)
  return looked + repairNumbers.length
}
