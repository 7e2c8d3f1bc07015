import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useEffect, useState } from 'react'
import { Link } from 'wouter'
import { moved } from '../../core/bench/queue.ts'
import { answer, api } from '../api.ts'
import { clockWords } from '../clock-words.ts'
import { useAct } from '../parts/act.tsx'
import { Asked } from '../parts/asked.tsx'
import { benchQuery } from '../parts/bench-query.ts'
import { CivilDate, MarginDay } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { EntryLine, Page } from '../parts/page.tsx'
import { Standing } from '../parts/standing.tsx'
import { timeWords } from '../parts/time-words.ts'
import { useShop } from '../shop.tsx'
import { Away } from './away.tsx'
import type { Bench, QueueRow } from './bench.ts'
import { Grip, useDrag } from './grip.tsx'
import { RunningClocks } from './running.tsx'

/** The queue in the order it is worked through, what is still to be looked over, running clocks and work away. */
export function Queue() {
  const { bench } = useShop().words
  const query = useQuery(benchQuery)
  return (
    <Asked query={query} title={bench.title}>
      {view => <Shown view={view} />}
    </Asked>
  )
}

function useMove(queue: readonly QueueRow[], choose: (number: number) => void) {
  const { bench } = useShop().words
  const act = useAct(
    (input: { repairIds: number[]; number: number }) =>
      answer(api.bench.order.$post({ json: { repairIds: input.repairIds } })),
    { said: (_, { number }) => bench.line.moved(number) },
  )
  const ids = queue.map(row => row.id)
  return (row: QueueRow | undefined, places: number) => {
    if (!row) return
    // What is moved stays chosen, also where it was chosen only as the first of the list.
    choose(row.number)
    act.run({ repairIds: moved(ids, row.id, places), number: row.number })
  }
}

/** Alt with an arrow moves the chosen repair: a shortcut for the buttons at the foot. */
function useMoveKeys(move: (places: number) => void) {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return
      event.preventDefault()
      move(event.key === 'ArrowUp' ? -1 : 1)
    }
    window.addEventListener('keydown', pressed)
    return () => window.removeEventListener('keydown', pressed)
  })
}

function useSums({ queue, capacity }: Bench) {
  const { words, formats } = useShop()
  const { sums } = words.bench
  return [
    { figure: queue.length, words: sums.queue },
    { figure: timeWords(words, capacity.aheadMinutes), words: sums.ahead },
    ...(capacity.weeks === null ? [] : [{ figure: formats.number(capacity.weeks), words: sums.weeks }]),
  ]
}

function Shown({ view }: { view: Bench }) {
  const { bench } = useShop().words
  const [number, setNumber] = useState<number | null>(null)
  const rows = [...view.queue, ...view.toAssess]
  const chosen = rows.find(row => row.number === number) ?? rows[0]
  const move = useMove(view.queue, setNumber)
  const movable = view.queue.includes(chosen as QueueRow) ? chosen : undefined
  useMoveKeys(places => move(movable, places))
  const placeOf = (id: number) => view.queue.findIndex(row => row.id === id)
  const drag = useDrag((id, onto) =>
    move(
      view.queue.find(row => row.id === id),
      placeOf(onto) - placeOf(id),
    ),
  )
  const comebacks = view.queue.filter(row => row.comeback)
  const inOrder = view.queue.filter(row => !row.comeback)
  return (
    <Page
      title={bench.title}
      subtitle={<Link href="/bench/today">{bench.today.open}</Link>}
      date={<MarginDay on={view.today} />}
      sums={useSums(view)}
      entry={<QueueLine chosen={chosen} movable={movable} move={move} />}
    >
      <Capacity capacity={view.capacity} />
      <RunningClocks running={view.running} />
      <Ledger
        caption={bench.list}
        columns={useColumns(row => placeOf(row.id) >= 0 && <Grip {...drag(row.id)} />)}
        groups={[
          { title: bench.groups.comeback, rows: comebacks },
          { title: comebacks.length + view.toAssess.length > 0 ? bench.groups.queue : '', rows: inOrder },
          { title: bench.groups.toAssess, rows: view.toAssess },
        ]}
        rowKey={row => row.number}
        empty={bench.empty}
        open={row => `/bench/${row.number}`}
        selected={chosen?.number ?? null}
        onSelect={row => setNumber(row.number)}
      />
      <Away away={view.away} />
    </Page>
  )
}

/** What the hours ahead are held against: the open hours of each bench. */
function Capacity({ capacity }: Pick<Bench, 'capacity'>) {
  const { words } = useShop()
  const { benches, minutesPerWeek } = capacity
  if (benches === 0) return null
  const each = timeWords(words, Math.round(minutesPerWeek / benches))
  return (
    <p className="capacity quiet">{words.bench.capacity(benches, each, timeWords(words, minutesPerWeek))}</p>
  )
}

function useColumns(grip: (row: QueueRow) => ReactNode): Column<QueueRow>[] {
  const { words } = useShop()
  const { bench } = words
  return [
    {
      label: bench.estimated,
      kind: 'date',
      cell: row => <CivilDate on={row.estimatedOn} style="short" />,
    },
    { label: bench.number, kind: 'number', cell: row => row.number },
    {
      label: bench.clock,
      kind: 'entry',
      cell: row => (
        <Entry lead={clockWords(words, row.clock)} rest={row.owner.name} second={<Second row={row} />} />
      ),
    },
    {
      label: bench.standing,
      kind: 'standing',
      cell: row => <Standing stage={row.stage} waitingFor={row.waitingFor} />,
    },
    {
      label: bench.worked,
      kind: 'figure',
      cell: row => (
        <>
          <Worked row={row} />
          {grip(row)}
        </>
      ),
    },
  ]
}

/** The fault, and what presses. */
function Second({ row }: { row: QueueRow }) {
  const { bench } = useShop().words
  return (
    <>
      {row.covered ? `${row.fault} · ${bench.covered}` : row.fault}
      {row.late && (
        <>
          {' '}
          · <span className="late">{bench.late}</span>
        </>
      )}
    </>
  )
}

function Worked({ row }: { row: QueueRow }) {
  const { words } = useShop()
  const worked = timeWords(words, row.workedMinutes)
  if (row.agreedMinutes === null) return worked
  return words.bench.ofAgreed(worked, timeWords(words, row.agreedMinutes))
}

interface QueueLineProps {
  readonly chosen: QueueRow | undefined
  readonly movable: QueueRow | undefined
  readonly move: (row: QueueRow | undefined, places: number) => void
}

/** The line at the foot: the chosen repair is opened, or moved in the queue. */
function QueueLine({ chosen, movable, move }: QueueLineProps) {
  const { words } = useShop()
  const { line } = words.bench
  return (
    <EntryLine label={line.label}>
      <div className="line">
        <span className="label">{chosen ? line.chosen(chosen.number) : line.none}</span>
        <div className="control">
          {chosen && clockWords(words, chosen.clock)}
          {movable && <small className="quiet move-hint">{line.hint}</small>}
        </div>
        <div className="buttons">
          {chosen && (
            <Link className="button" href={`/bench/${chosen.number}`}>
              {line.open(chosen.number)}
            </Link>
          )}
          {movable && (
            <>
              <button type="button" className="second" onClick={() => move(movable, -1)}>
                {line.up}
              </button>
              <button type="button" className="second" onClick={() => move(movable, 1)}>
                {line.down}
              </button>
            </>
          )}
        </div>
      </div>
    </EntryLine>
  )
}
