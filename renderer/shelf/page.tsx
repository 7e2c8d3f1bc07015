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
      subtitle={shelf.round(formats.longDate(view.today))}
      date={<MarginDay on={view.today} />}
      sums={sums}
      entry={chosen && <ReadingLine key={chosen.runId} row={chosen} rows={view.rows} />}
    >
      <ComputerClock check={view.clockCheck} />
      <p className="computer">
        <Link href="/shelf/where">{shelf.where.open}</Link>
      </p>
      <Two>
        <Round view={view} chosen={chosen?.number ?? start?.number ?? null} />
        {chosen ? (
          <RunPane key={chosen.runId} runId={chosen.runId} places={view.places} />
        ) : start ? (
          <StartPane key={start.repairId} row={start} places={view.places} />
        ) : (
          <p className="aside-words">{number ? shelf.run.notHere(number) : shelf.run.choose}</p>
        )}
      </Two>
    </Page>
  )
}
