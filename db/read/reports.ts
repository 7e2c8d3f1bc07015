import { civilDateOf } from '../../core/calendar/zone.ts'
import { minor } from '../../core/money/minor.ts'
import { comebackRates } from '../../core/reports/comebacks.ts'
import { earnedByPerson } from '../../core/reports/earned.ts'
import { estimatedAgainstWorked } from '../../core/reports/hours.ts'
import { stockWorth } from '../../core/reports/stock.ts'
import { meanTurnRounds } from '../../core/reports/turn-round.ts'
import type { Read } from '../file/ledger.ts'
import { readSettings } from '../rows/settings.ts'
import * as s from '../schema/index.ts'
import { agreedMinutesOf } from './agreed-hours.ts'
import * as fact from './handed-over.ts'

const allMinutes = (worked: fact.Worked): number => worked.reduce((sum, { minutes }) => sum + minutes, 0)

/** Time in the shop of those that became ready: what went back unrepaired tells nothing of the work. */
function turnRounds(read: Read, repairs: readonly fact.HandedOver[]) {
  const ids = repairs.map(({ id }) => id)
  const [waits, runIns, allowed] = [
    fact.waitsOf(read, ids),
    fact.runsOf(read, ids),
    fact.firstWords(read, ids),
  ]
  return meanTurnRounds(
    repairs.flatMap(({ id, scope, takenInAt, readyAt, collectedAt }) =>
      readyAt === null
        ? []
        : [
            {
              key: scope,
              facts: {
                takenInAt,
                allowedAt: allowed.get(id) ?? takenInAt,
                readyAt,
                collectedAt,
                waits: waits(id),
                runIns: runIns(id),
              },
            },
          ],
    ),
  )
}

const namesOf = (read: Read): ReadonlyMap<number, string> =>
  new Map(
    read
      .select({ id: s.people.id, name: s.people.name })
      .from(s.people)
      .all()
      .map(({ id, name }) => [id, name]),
  )

/** The hours of every repair that was agreed to, beside its work and its form. */
function hoursFacts(read: Read, repairs: readonly fact.HandedOver[], worked: (id: number) => fact.Worked) {
  const agreed = agreedMinutesOf(
    read,
    repairs.map(({ id }) => id),
  )
  return repairs.flatMap(({ id, scope, form }) => {
    const estimatedMinutes = agreed.get(id)
    const workedMinutes = allMinutes(worked(id))
    return estimatedMinutes === undefined ? [] : [{ scope, form, estimatedMinutes, workedMinutes }]
  })
}

/**
 * What the shop's records add up to for the clocks handed over from one day to another: estimated against worked hours,
 * turn-round, comebacks so far, what the bench hours earned; and the stock's worth as it stands now.
 */
export function figuresView(read: Read, from: string, to: string, at: string) {
  const { place } = readSettings(read)
  const repairs = fact.handedOver(read, from, to, place.timeZone)
  const ids = repairs.map(({ id }) => id)
  const worked = fact.workedOn(read, ids, at)
  const hours = hoursFacts(read, repairs, worked)
  const back = fact.cameBack(read, ids)
  const billed = fact.labourBilled(read, ids, place.currency)
  const names = namesOf(read)
  const earned = earnedByPerson(
    ids.map(id => ({ labourMinor: billed.get(id) ?? minor(0), worked: worked(id) })),
  )
  const stock = stockWorth(read.select().from(s.parts).all())
  return {
    from,
    to,
    handedOver: repairs.length,
    hours: {
      byWork: estimatedAgainstWorked(hours.map(one => ({ ...one, key: one.scope }))),
      byForm: estimatedAgainstWorked(hours.map(one => ({ ...one, key: one.form }))),
    },
    turnRound: turnRounds(read, repairs),
    comebacks: {
      byMonth: comebackRates(
        repairs.map(({ id, collectedAt }) => ({
          key: civilDateOf(collectedAt, place.timeZone).slice(0, 7),
          cameBack: back.has(id),
        })),
      ),
      byWork: comebackRates(repairs.map(({ id, scope }) => ({ key: scope, cameBack: back.has(id) }))),
    },
    earned: {
      ...earned,
      rows: earned.rows.map(row => ({ ...row, person: names.get(row.personId ?? 0) ?? null })),
    },
    stock,
    stockMinor: minor(stock.reduce((sum, row) => sum + row.valueMinor, 0)),
  }
}
