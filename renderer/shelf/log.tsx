import { useState } from 'react'
import { readingOf } from '../../core/run-in/log.ts'
import { seenAt } from '../../core/run-in/seen.ts'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField } from '../parts/field.tsx'
import { Seconds } from '../parts/figures.tsx'
import { type Column, Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'
import {
  blankReading,
  RareFields,
  readingInput,
  type Said,
  SeenTicks,
  type TypedReading,
} from './reading-form.tsx'
import type { LogEntry, RunView } from './shelf.ts'

/** So many readings stand there at once; a log of a year would keep the page waiting. */
const newest = 50

/** The readings as a table, the newest first; each can be corrected or struck out while the clock runs in. */
export function Log({ view }: { view: RunView }) {
  const { words, formats } = useShop()
  const { log: said } = words.shelf
  const [changing, setChanging] = useState<LogEntry | null>(null)
  const [whole, setWhole] = useState(false)
  const entries = view.run.log.toReversed()
  const shown = whole ? entries : entries.slice(0, newest)
  const columns: Column<LogEntry>[] = [
    {
      label: said.at,
      kind: 'text',
      cell: entry => <Struck entry={entry}>{formats.instant(entry.at)}</Struck>,
    },
    { label: said.error, kind: 'figure', cell: entry => <ErrorCell entry={entry} /> },
    { label: said.seen, kind: 'text', cell: entry => <Seen entry={entry} log={view.run.log} /> },
    ...(view.run.endedAt
      ? []
      : [
          {
            label: said.act,
            kind: 'text' as const,
            cell: (entry: LogEntry) =>
              entry.stands && (
                <button
                  type="button"
                  className="plain"
                  aria-label={said.correctWhat(formats.instant(entry.at))}
                  onClick={() => setChanging(entry)}
                >
                  {said.correct}
                </button>
              ),
          },
        ]),
  ]
  return (
    <section className="log" aria-label={said.heading}>
      <h3>{said.heading}</h3>
      {changing && <Change key={changing.id} entry={changing} view={view} close={() => setChanging(null)} />}
      <Ledger
        caption={said.heading}
        columns={columns}
        groups={[{ title: '', rows: shown }]}
        rowKey={entry => entry.id}
        empty={words.shelf.chart.nothing}
        plain
      />
      {shown.length < entries.length && (
        <p>
          <button type="button" className="second" onClick={() => setWhole(true)}>
            {said.earlier(entries.length - shown.length)}
          </button>
        </p>
      )}
    </section>
  )
}

const Struck = ({ entry, children }: { entry: LogEntry; children: React.ReactNode }) =>
  entry.stands || entry.withdrawn ? children : <s>{children}</s>

const ErrorCell = ({ entry }: { entry: LogEntry }) => {
  const ms = entry.errorMs ?? entry.leftMs
  return ms === null ? null : (
    <Struck entry={entry}>
      <Seconds value={ms / 1000} />
    </Struck>
  )
}

/** What was seen and done at a reading, in words. */
function Seen({ entry, log }: { entry: LogEntry; log: readonly LogEntry[] }) {
  const { words, formats } = useShop()
  const { log: said } = words.shelf
  const corrected = log.some(other => other.correctsId === entry.id && !other.withdrawn)
  const struck = log.some(other => other.correctsId === entry.id && other.withdrawn)
  const seen = seenAt(readingOf(entry)).map(({ code, values }) =>
    words.seen[code]({
      ...Object.fromEntries(Object.entries(values).map(([key, value]) => [key, formats.number(value)])),
      ...(values.left === undefined ? {} : { left: formats.signedSeconds(values.left) }),
    }),
  )
  const parts = [
    corrected && said.corrected,
    (struck || entry.withdrawn) && said.struckOut,
    entry.correctsId !== null && !entry.withdrawn && said.correctionOf,
    ...seen,
    entry.temperatureC !== null && said.temperature(formats.number(entry.temperatureC)),
    entry.note,
  ]
  return <>{parts.filter(Boolean).join(' · ')}</>
}

const asSaid = (value: boolean | null): Said => (value === null ? '' : value ? 'right' : 'wrong')
const asText = (value: number | null): string => (value === null ? '' : String(value))

/** The entry as it would be typed, to be corrected. */
const typedAgain = (entry: LogEntry): TypedReading => ({
  ...blankReading,
  error: asText(entry.errorMs === null ? null : entry.errorMs / 1000),
  // What is corrected was looked at: nobody is asked again.
  sure: true,
  wound: entry.wound,
  hourShown: asText(entry.hourShown),
  hourCounted: asText(entry.hourCounted),
  half: asText(entry.halfCounted),
  quarter: asText(entry.quarter),
  quarterSaid: asSaid(entry.quarterRight),
  twelveRight: entry.twelveRight,
  fourRight: entry.fourRight,
  selfCorrected: asSaid(entry.selfCorrected),
  silent: asSaid(entry.silent),
  repeats: asSaid(entry.repeats),
  inBeat: asSaid(entry.inBeat),
  stopped: entry.stopped,
  handsSet: entry.leftMs !== null,
  left: entry.leftMs === null ? '0' : String(entry.leftMs / 1000),
  nutTurns: entry.nutTurns,
  event: entry.event ?? '',
  temperatureC: asText(entry.temperatureC),
  note: entry.note,
})

interface ChangeProps {
  readonly entry: LogEntry
  readonly view: RunView
  readonly close: () => void
}

/** Corrects a reading by a new one, or strikes it out with a reason. */
function Change({ entry, view, close }: ChangeProps) {
  const { words, formats } = useShop()
  const { log: said, reading } = words.shelf
  const typed = useEntry(typedAgain(entry))
  const act = useAct(
    (input: ReturnType<typeof readingInput>) =>
      answer(api.shelf.correct.$post({ json: { readingId: entry.id, ...input } })),
    { said: () => said.correctSaid, after: close },
  )
  return (
    <div className="change">
      <ActForm
        act={act}
        input={() => readingInput(typed.value)}
        label={said.correctWhat(formats.instant(entry.at))}
        focusFirst
      >
        <h3>{said.correctWhat(formats.instant(entry.at))}</h3>
        <TextField label={reading.error} {...typed.at('error')} />
        <SeenTicks entry={typed} clock={view.clock} />
        <RareFields entry={typed} clock={view.clock} />
        <div className="buttons">
          <Send act={act}>{said.correct}</Send>
          <button type="button" className="second" onClick={close}>
            {words.screens.form.no}
          </button>
        </div>
      </ActForm>
      <StrikeOut entry={entry} close={close} />
    </div>
  )
}

function StrikeOut({ entry, close }: { entry: LogEntry; close: () => void }) {
  const { words, formats } = useShop()
  const { log: said } = words.shelf
  const typed = useEntry({ reason: '' })
  const act = useAct(
    (input: { readingId: number; reason: string }) => answer(api.shelf.strikeReading.$post({ json: input })),
    { said: () => said.strikeSaid, after: close },
  )
  return (
    <ActForm
      act={act}
      input={() => ({ readingId: entry.id, ...typed.value })}
      label={said.strikeWhat(formats.instant(entry.at))}
    >
      <TextField label={said.strikeReason} {...typed.at('reason')} />
      <div className="buttons">
        <Send act={act} look="second">
          {said.strike}
        </Send>
      </div>
    </ActForm>
  )
}
