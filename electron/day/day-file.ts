import { z } from 'zod'
import { type ActInput, inTodaysShape } from '../../core/acts/versions.ts'
import { instantMs, instantOf } from '../../core/calendar/zone.ts'
import { problem } from '../../core/problems.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import { resolved } from '../server/day-references.ts'
import { inputProblems, withMessages } from '../server/problems.ts'
import { id } from '../server/requests/fields.ts'

/**
 * One act of a day: when (local time in the shop's zone, or an instant), by whom, what, with what; `label` names its result for later
 * acts. An exported day book also has the version of the input, the key it was sent under and the salt of its commitment.
 */
const act = z.strictObject({
  at: z.string().max(40),
  who: z
    .union([id, z.string().startsWith('@')])
    .nullable()
    .default(null),
  act: z.string().regex(/^[a-z]+[A-Za-z]*\.[a-z]+[A-Za-z]*$/),
  version: z.int().positive().default(1),
  key: z.string().optional(),
  salt: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
  redacted: z.literal(true).optional(),
  label: z
    .string()
    .regex(/^[a-z][a-z0-9-]*$/)
    .optional(),
  with: z.record(z.string(), z.unknown()).default({}),
})

export type DayAct = z.infer<typeof act>

/** A day file: acts in order. The day book exported is one. */
export const dayFile = z.array(act)

/** The acts in a day file's text; refuses with every problem in it. */
export function parseDayFile(text: string): DayAct[] {
  const given: unknown = JSON.parse(text)
  const parsed = dayFile.safeParse(given)
  if (!parsed.success) throw new Refusal(inputProblems(parsed.error, given))
  return parsed.data
}

/** What an act of a day file came to. */
export interface Played {
  readonly act: string
  readonly at: string
  readonly label?: string | undefined
  readonly result: Record<string, unknown>
}

/** An act of a day file that was refused, and everything said against it. Those before it stand. */
export class DayFileStopped extends Error {
  readonly index: number
  readonly act: string
  readonly problems: readonly { field: string; message: string }[]

  constructor(index: number, act: string, problems: readonly { field: string; message: string }[]) {
    super(`act ${index + 1}, ${act}: ${problems.map(p => `${p.field} ${p.message}`.trim()).join(' ')}`)
    this.index = index
    this.act = act
    this.problems = problems
  }
}

function instantFor(at: string, timeZone: string | undefined): string {
  const ms = instantMs(at)
  if (ms !== undefined) return new Date(ms).toISOString()
  if (timeZone === undefined)
    throw new Error(`${at} is a local time, and the shop’s time zone is not known yet`)
  return instantOf(at, timeZone)
}

/** The zone an opening or a change of the shop's place speaks of. */
function zoneIn(input: ActInput): string | undefined {
  const place = z.object({ place: z.object({ timeZone: z.string() }) })
  const named = z.union([place, z.object({ settings: place }).transform(v => v.settings)]).safeParse(input)
  return named.success ? named.data.place.timeZone : undefined
}

/** How acts reach the ledger: the handler, and the hand that sets its clock. */
export interface Stage {
  readonly handle: (request: Request) => Promise<Response>
  readonly setNow: (instant: string) => void
  /** Gives the ledger the salt of the next act; a fresh one where none is given. */
  readonly setSalt?: (salt: string | undefined) => void
}

async function perform(stage: Stage, one: DayAct, input: unknown, who: unknown, index: number) {
  const response = await stage.handle(
    new Request(`http://ledger/api/${one.act.replace('.', '/')}`, {
      method: 'POST',
      headers: {
        'Content-Type': 'application/json',
        ...(who === null ? {} : { 'Countwheel-Person': String(who) }),
        ...(one.key === undefined ? {} : { 'Idempotency-Key': one.key }),
      },
      body: JSON.stringify(input),
    }),
  )
  const answer = (await response.json()) as { problems?: { field: string; message: string }[] } & Record<
    string,
    unknown
  >
  if (!response.ok) throw new DayFileStopped(index, one.act, answer.problems ?? [])
  return answer
}

/** The input brought to today's shape; a file from elsewhere may hold what no version ever had. */
function brought(act: string, version: number, input: ActInput): ActInput | 'unreadable' | undefined {
  try {
    return inTodaysShape(act, version, input)
  } catch {
    return 'unreadable'
  }
}

/** The input in today's shape; stops at one whose text was taken out, or that is of a newer program. */
function shapedInput({ act, version, redacted }: DayAct, input: ActInput, index: number): ActInput {
  const shaped = redacted ? undefined : brought(act, version, input)
  if (shaped && shaped !== 'unreadable') return shaped
  const why = redacted
    ? problem('dayFile.redacted', '')
    : shaped === 'unreadable'
      ? problem('dayFile.unreadable', 'with')
      : problem('dayFile.version', 'version', { version })
  throw new DayFileStopped(index, act, withMessages([why]))
}

/** Plays the acts in order through the ledger's own handler, the clock standing at each act's time. Stops at the first refusal. */
export async function playDay(stage: Stage, acts: readonly DayAct[]): Promise<Played[]> {
  const results = new Map<string, Record<string, unknown>>()
  const played: Played[] = []
  let timeZone: string | undefined
  for (const [index, one] of acts.entries()) {
    const input = shapedInput(one, resolved(one.with, results) as ActInput, index)
    timeZone = zoneIn(input) ?? timeZone
    const at = instantFor(one.at, timeZone)
    stage.setNow(at)
    stage.setSalt?.(one.salt)
    const result = await perform(stage, one, input, resolved(one.who, results), index)
    if (one.label) results.set(one.label, result)
    played.push({ act: one.act, at, label: one.label, result })
  }
  return played
}
