import { Link, useLocation } from 'wouter'
import { clockWords } from '../clock-words.ts'
import { Seconds } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { DescribePlaces } from './fit.tsx'
import type { RoundRow, Shelf } from './shelf.ts'

/** A line of the list: a clock that runs in, or one that is ready to. */
interface Line {
  readonly number: number
  readonly clock: RoundRow['clock']
  readonly owner: RoundRow['owner']
  readonly run: RoundRow | null
}

/** The clocks in walking order with what is due and the last readings, those ready for the shelf, and what stands where. */
export function Round({ view, chosen }: { view: Shelf; chosen: number | null }) {
  const { words } = useShop()
  const { shelf } = words
  const [, navigate] = useLocation()
  const running: Line[] = view.rows.map(run => ({ ...run, run }))
  const waiting: Line[] = view.toStart.map(row => ({ ...row, run: null }))
  return (
    <div className="round">
      <Ledger
        caption={shelf.list}
        columns={useColumns()}
        groups={[
          { title: waiting.length > 0 ? shelf.running : '', rows: running },
          { title: shelf.toStart, rows: waiting },
        ]}
        rowKey={line => line.number}
        empty={shelf.empty}
        open={line => `/shelf/${line.number}`}
        selected={chosen}
        onSelect={line => navigate(`/shelf/${line.number}`, { replace: true })}
      />
      <Places view={view} />
    </div>
  )
}

function useColumns(): Column<Line>[] {
  const { words } = useShop()
  const { shelf } = words
  return [
    { label: shelf.place, kind: 'date', cell: ({ run }) => run?.place?.name ?? shelf.noPlace },
    { label: shelf.number, kind: 'number', cell: ({ number }) => number },
    {
      label: shelf.clock,
      kind: 'entry',
      cell: line => (
        <Entry
          lead={clockWords(words, line.clock)}
          second={line.run ? <Progress run={line.run} /> : line.owner.name}
        />
      ),
    },
    { label: shelf.last, kind: 'figure', cell: ({ run }) => run && <LastReadings run={run} /> },
  ]
}

/** Where in its plan the clock is and what the round asks of it. */
function Progress({ run }: { run: RoundRow }) {
  const { words, formats } = useShop()
  const { shelf } = words
  const { due, day, ofDays, stageName } = run
  const parts = [
    day > ofDays ? shelf.afterPlan(ofDays, stageName) : shelf.dayOf(day, ofDays, stageName),
    due.wind && shelf.due.wind,
    due.reading && shelf.due.reading,
    due.overdue && shelf.due.overdue,
    !due.wind && !due.reading && due.nextOn && shelf.due.next(formats.shortDate(due.nextOn)),
    words.verdictsInShort[run.verdict],
  ]
  return parts.filter(Boolean).join(' · ')
}

/** The last reading, and smaller the ones before it. */
function LastReadings({ run }: { run: RoundRow }) {
  const { words } = useShop()
  const [last, ...before] = run.last
  if (!last) return words.shelf.notRead
  return (
    <>
      <ErrorOf reading={last} />
      {before.map(reading => (
        <small key={reading.at} className="before">
          <ErrorOf reading={reading} />
        </small>
      ))}
    </>
  )
}

const ErrorOf = ({ reading }: { reading: RoundRow['last'][number] }) => {
  const { words } = useShop()
  return reading.errorMs === null ? words.shelf.stopped : <Seconds value={reading.errorMs / 1000} />
}

/** The places drawn as they are walked past, each with the number of the clock that stands there. */
function Places({ view }: { view: Shelf }) {
  const { shelf } = useShop().words
  if (view.places.length === 0) return null
  return (
    <Section title={shelf.placesHeading}>
      <ol className="places">
        {view.places.map(place => (
          <li key={place.id} className={place.number === null ? `${place.kind} free` : place.kind}>
            <span>{place.name}</span>
            {place.number === null ? (
              <small>{shelf.free}</small>
            ) : (
              <Link href={`/shelf/${place.number}`}>{place.number}</Link>
            )}
          </li>
        ))}
      </ol>
      <DescribePlaces places={view.places} />
    </Section>
  )
}
