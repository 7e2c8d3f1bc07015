import { useQuery } from '@tanstack/react-query'
import { Link, Route, Switch } from 'wouter'
import { Asked } from '../parts/asked.tsx'
import { MarginDay } from '../parts/figures.tsx'
import { Page } from '../parts/page.tsx'
import { Two } from '../parts/pane.tsx'
import { useShop } from '../shop.tsx'
import { ComputerClock } from './computer-clock.tsx'
import { ReadingLine } from './reading-line.tsx'
import { Round } from './round.tsx'
import { RunPane } from './run-pane.tsx'
import { type Shelf, shelfQuery } from './shelf.ts'
import './shelf.css'
import { StartPane } from './start-pane.tsx'
import { WhereEverythingIs } from './where.tsx'

/** The Shelf: the round of today, and the clock chosen on it beside. */
export default function ShelfPage() {
  const { shelf } = useShop().words
  const query = useQuery(shelfQuery)
  return (
    <Switch>
      <Route path="/shelf/where" component={WhereEverythingIs} />
      <Route path="/shelf/:number?">
        {({ number }) => (
          <Asked query={query} title={shelf.title}>
            {view => <Shown view={view} number={number} />}
          </Asked>
        )}
      </Route>
    </Switch>
  )
}

function Shown({ view, number }: { view: Shelf; number: string | undefined }) {
  const { words, formats } = useShop()
  const { shelf } = words
  const first = view.rows.find(row => row.due.reading || row.due.wind) ?? view.rows[0]
  const chosen = number === undefined ? first : view.rows.find(row => String(row.number) === number)
  const start = view.toStart.find(row => String(row.number) === number)
  const { counts } = view
  const sums = [
    { figure: counts.running, words: shelf.sums.running },
    { figure: counts.due, words: shelf.sums.due },
    { figure: counts.toWind, words: shelf.sums.toWind },
    { figure: counts.mayPass, words: shelf.sums.mayPass },
  ]
  return (
    <Page
      title={shelf.title}
      subtitle={
        <>
          {shelf.round(formats.longDate(view.today))} · <Link href="/shelf/where">{shelf.where.open}</Link>
        </>
      }
      date={<MarginDay on={view.today} />}
      sums={sums}
      entry={chosen && <ReadingLine key={chosen.runId} row={chosen} rows={view.rows} />}
    >
      <ComputerClock check={view.clockCheck} />

      <Two>
        <Round view={view} chosen={chosen?.number ?? start?.number ?? null} />
        {chosen ? (
          <RunPane key={chosen.runId} runId={chosen.runId} places={view.places} />
        ) : start ? (
          <StartPane key={start.repairId} row={start} places={view.places} />
        ) : (
          <NotHere number={number} />
        )}
      </Two>
    </Page>
  )
}

/** What stands beside the round where no clock on it is chosen; a number leads to its repair, where a passed clock goes on. */
function NotHere({ number }: { number: string | undefined }) {
  const { run } = useShop().words.shelf
  if (number === undefined) return <p className="aside-words">{run.choose}</p>
  return (
    <div className="aside-words">
      <p>{run.notHere(number)}</p>
      <p className="buttons">
        <Link className="button" href={`/counter/${number}`}>
          {run.openRepair(number)}
        </Link>
        <Link className="button second" href={`/bench/${number}`}>
          {run.openBench(number)}
        </Link>
      </p>
    </div>
  )
}
