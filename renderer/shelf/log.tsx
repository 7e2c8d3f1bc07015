import { useState } from 'react'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField } from '../parts/field.tsx'
import { Seconds } from '../parts/figures.tsx'
import { type Column, Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'
import { blankReading, RareFields, readingInput, type Said, SeenTicks } from './reading-form.tsx'
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

const ErrorCell = ({ entry }: { entry: LogEntry }) =>
  entry.errorMs === null ? null : (
    <Struck entry={entry}>
      <Seconds value={entry.errorMs / 1000} />
    </Struck>
  )

/** What was seen and done at a reading, in words. */
function Seen({ entry, log }: { entry: LogEntry; log: readonly LogEntry[] }) {
  const { words, formats } = useShop()
  const { log: said, wound, stopped } = words.shelf
  const corrected = log.some(other => other.correctsId === entry.id && !other.withdrawn)
  const struck = log.some(other => other.correctsId === entry.id && other.withdrawn)
  const answered = (value: boolean | null, yes: string, no: string) => value !== null && (value ? yes : no)
  const parts = [
    corrected && said.corrected,
    (struck || entry.withdrawn) && said.struckOut,
    entry.correctsId !== null && !entry.withdrawn && said.correctionOf,
    entry.wound && wound,
    answered(entry.strikeRight, said.strikeRight, said.strikeWrong),
    answered(entry.chimeRight, said.chimeRight, said.chimeWrong),
    answered(entry.inBeat, said.inBeat, said.outOfBeat),
    entry.blows !== null && said.heard(entry.heardAt, entry.blows),
    entry.stopped && stopped,
    entry.handsSet && said.handsSet,
    entry.nutTurns !== '' && said.nut(formats.quantity(entry.nutTurns)),
    entry.temperatureC !== null && said.temperature(formats.number(entry.temperatureC)),
    entry.note,
  ]
  return <>{parts.filter(Boolean).join(' · ')}</>
}

const asSaid = (value: boolean | null): Said => (value === null ? '' : value ? 'right' : 'wrong')
const asText = (value: number | null): string => (value === null ? '' : String(value))

/** The entry as it would be typed, to be corrected. */
const typedAgain = (entry: LogEntry) => ({
  ...blankReading,
  error: asText(entry.errorMs === null ? null : entry.errorMs / 1000),
  wound: entry.wound,
  strikeRight: asSaid(entry.strikeRight),
  chimeRight: asSaid(entry.chimeRight),
  inBeat: asSaid(entry.inBeat),
  stopped: entry.stopped,
  handsSet: entry.handsSet,
  nutTurns: entry.nutTurns,
  heardAt: entry.heardAt,
  blows: asText(entry.blows),
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
