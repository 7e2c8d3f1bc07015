import { useQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { clockWords } from '../clock-words.ts'
import { Cautions } from '../parts/cautions.tsx'
import { CivilDate } from '../parts/figures.tsx'
import { Facts } from '../parts/page.tsx'
import { Pane } from '../parts/pane.tsx'
import { WorkingPaperLink } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'
import { Chart } from './chart.tsx'
import { Decide } from './decide.tsx'
import { Log } from './log.tsx'
import { Figures, Verdict } from './run-figures.tsx'
import { RunsBefore } from './runs-before.tsx'
import { type RunView, runQuery, type Shelf } from './shelf.ts'
import { SoundSheet } from './sound-sheet.tsx'
import { WindCharts } from './wind-charts.tsx'

/** One run: its chart, its figures in words, what is still to be shown, the decision, its log. */
export function RunPane({ runId, places }: { runId: number; places: Shelf['places'] }) {
  const { words } = useShop()
  const { data, error } = useQuery(runQuery(runId))
  if (error) return <p className="aside-words">{words.screens.unreachable}</p>
  return data ? <Shown view={data} places={places} /> : null
}

function Shown({ view, places }: { view: RunView; places: Shelf['places'] }) {
  const { words, formats, settings } = useShop()
  const { run: said } = words.shelf
  const { run, repair, clock, owner } = view
  const nextDue = run.dues.find(due => due.doneAt === null)
  return (
    <Pane title={said.title(repair.number, clockWords(words, clock))}>
      <p className="quiet">
        {said.about(owner.name, formats.date(run.startedOn))} ·{' '}
        <Link href={`/counter/${repair.number}`}>{said.openRepair(repair.number)}</Link>
      </p>
      <Chart view={view} />
      <Figures view={view} />
      <Verdict view={view} />
      <SoundSheet view={view} />
      <WindCharts view={view} />
      <Facts
        facts={[
          [said.planned, <CivilDate key="ready" on={run.readyOn} />],
          [
            said.nextDue,
            nextDue && <CivilDate key="due" on={civilDateOf(nextDue.dueAt, settings.place.timeZone)} />,
          ],
        ]}
      />
      <Cautions codes={view.cautions} />
      <Decide view={view} places={places} />
      <Log view={view} />
      <RunsBefore runs={view.before} />
      <p>
        <WorkingPaperLink kind="run-in-certificate" id={run.id} />
      </p>
    </Pane>
  )
}
