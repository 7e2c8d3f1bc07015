import { useEffect, useRef } from 'react'
import { useLocation } from 'wouter'
import { localOf } from '../../core/calendar/zone.ts'
import { nextOnRound } from '../../core/run-in/round.ts'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Field, Tick } from '../parts/field.tsx'
import { EntryLine } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { blankReading, RareFields, readingInput, SeenTicks, tickByKey } from './reading-form.tsx'
import type { RoundRow } from './shelf.ts'

interface ReadingLineProps {
  readonly row: RoundRow
  readonly rows: readonly RoundRow[]
}

/** `HH:MM` of the shop's day. */
const localTimeNow = (timeZone: string): string => localOf(new Date().toISOString(), timeZone).slice(11, 16)

/** Set when a reading led here from the clock before, so that the cursor is already in the line. */
let cameByEnter = false

/** The clocks read since these rows came: the rows do not know of it yet, and the round does not go back to them. */
let readSince: { rows: readonly RoundRow[]; numbers: readonly number[] } = { rows: [], numbers: [] }

const readSinceCame = (rows: readonly RoundRow[]) => (readSince.rows === rows ? readSince.numbers : [])

function nextOf({ row, rows }: ReadingLineProps): number | null {
  const read = readSinceCame(rows)
  const still = rows.filter(({ number }) => number === row.number || !read.includes(number))
  return nextOnRound(still, row.number)
}

type Reading = ReturnType<typeof readingInput>

function useReading({ row, rows }: ReadingLineProps, entered: () => void) {
  const { words, formats } = useShop()
  const { reading } = words.shelf
  const [, navigate] = useLocation()
  const next = nextOf({ row, rows })
  const act = useAct(
    (given: Reading) => answer(api.shelf.read.$post({ json: { runId: row.runId, ...given } })),
    {
      said: ({ errorMs, leftMs }) => {
        const ms = errorMs ?? leftMs
        const written =
          ms === null
            ? reading.saidSeen(row.number)
            : reading.said(row.number, formats.signedSeconds(ms / 1000))
        return next === null ? `${written} ${reading.done}` : written
      },
      after: () => {
        entered()
        readSince = { rows, numbers: [...readSinceCame(rows), row.number] }
        if (next === null) return
        cameByEnter = true
        navigate(`/shelf/${next}`, { replace: true })
      },
    },
  )
  return { act, next }
}

/** The line at the foot of the round: the error is typed, letters tick what was seen, Enter goes on to the next clock. */
export function ReadingLine({ row, rows }: ReadingLineProps) {
  const { words, settings } = useShop()
  const { reading } = words.shelf
  const { timeZone } = settings.place
  const entry = useEntry(blankReading)
  const box = useRef<HTMLInputElement>(null)
  const rare = useRef<HTMLDetailsElement>(null)
  const { act, next } = useReading({ row, rows }, entry.reset)
  useEffect(() => {
    if (cameByEnter) box.current?.focus()
    cameByEnter = false
  }, [])
  const toNut = () => {
    if (rare.current) rare.current.open = true
    rare.current?.querySelector('input')?.focus()
  }
  return (
    <EntryLine label={reading.label}>
      <ActForm
        act={act}
        input={() => readingInput(entry.value)}
        className="reading-line"
        label={reading.label}
      >
        <span className="label">{reading.now(row.number)}</span>
        <div className="control">
          <Field name="error" label={reading.error} hideLabel hint={reading.errorHint}>
            {control => (
              <input
                {...control}
                ref={box}
                className="error-box"
                autoComplete="off"
                spellCheck={false}
                value={entry.value.error}
                onChange={event => entry.set({ error: event.target.value })}
                onKeyDown={event =>
                  tickByKey(event, { entry, clock: row.clock, local: localTimeNow(timeZone), toNut })
                }
              />
            )}
          </Field>
          <details ref={rare} className="more rarely">
            <summary>{reading.more}</summary>
            <RareFields entry={entry} clock={row.clock} />
          </details>
          <SeenTicks entry={entry} clock={row.clock} />
          {act.problems.some(({ code }) => code === 'reading.unlikely') && (
            <Tick label={reading.sure} {...entry.at('sure')} />
          )}
        </div>
        <div className="buttons">
          <Send act={act}>{next === null ? reading.sendLast : reading.send}</Send>
        </div>
      </ActForm>
    </EntryLine>
  )
}
