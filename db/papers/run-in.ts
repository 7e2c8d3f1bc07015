import { eq } from 'drizzle-orm'
import type { CertificateReading, RunInContents } from '../../core/papers/working.ts'
import { shelfLog } from '../../core/run-in/log.ts'
import type { Read } from '../file/ledger.ts'
import { runDetail } from '../read/run.ts'
import { clockRow } from '../rows/register-rows.ts'
import { runRow } from '../rules/run-log.ts'
import { people } from '../schema/index.ts'
import { repairAndTop } from './top.ts'

type Run = ReturnType<typeof runDetail>

/** How a clock ran on the shelf: the log as it stands and its figures, those of an ended run as they were frozen. */
export function runInContents(read: Read, runId: number, at: string): RunInContents {
  const { repair, top, timeZone } = repairAndTop(read, runRow(read, runId).repairId, at)
  const clock = clockRow(read, repair.clockId)
  const run = runDetail(read, runRow(read, runId), clock, at, timeZone)
  const decidedBy = nameOf(read, run.decidedBy)
  return {
    ...top,
    kind: 'run-in-certificate',
    startedAt: run.startedAt,
    ...(run.endedAt === null ? {} : { endedAt: run.endedAt }),
    ...(run.outcome === null ? {} : { outcome: run.outcome }),
    ...(run.reason ? { reason: run.reason } : {}),
    ...(decidedBy ? { decidedBy } : {}),
    stages: run.stages.map(({ name, fromAt, toAt }) => ({ name, fromAt, toAt })),
    limitPerDay: run.limitPerDay,
    steadySeconds: run.limits.steady,
    readings: certificateReadings(run),
    figures: run.figures,
  }
}

/** The readings that count, each with its temperature where one was taken. */
function certificateReadings({ log }: Run): CertificateReading[] {
  const standing = log.filter(entry => entry.stands)
  const temperatures = new Map(standing.map(({ at, temperatureC }) => [at, temperatureC]))
  return shelfLog(log).map(reading => {
    const temperatureC = temperatures.get(reading.at)
    return temperatureC === null || temperatureC === undefined ? reading : { ...reading, temperatureC }
  })
}

const nameOf = (read: Read, personId: number | null): string | undefined =>
  personId === null
    ? undefined
    : read.select({ name: people.name }).from(people).where(eq(people.id, personId)).get()?.name
