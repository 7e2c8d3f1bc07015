import { useQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { patternOf } from '../../core/run-in/limits.ts'
import { blowsPerDay, roundedValues, shownFigures } from '../../core/run-in/shown.ts'
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
import { type RunView, runQuery, type Shelf } from './shelf.ts'

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
      <p>
        <WorkingPaperLink kind="run-in-certificate" id={run.id} />
      </p>
    </Pane>
  )
}

/** The figures of the log, each with its words; those not known are left out. */
function Figures({ view }: { view: RunView }) {
  const { words, formats } = useShop()
  const { figures: said } = words.shelf
  const shown = shownFigures(view.run.figures)
  const seconds = (value: number | null) => value !== null && formats.signedSeconds(value)
  const count = (value: number | null) => value !== null && formats.number(value)
  const figures = [
    [said.ratePerDay, seconds(shown.ratePerDay)],
    [said.netPerWind, seconds(shown.netPerWind)],
    [said.secondsPerDayPerTurn, seconds(shown.secondsPerDayPerTurn)],
    [said.suggestedTurns, count(shown.suggestedTurns)],
    [said.trendOverWind, seconds(shown.trendOverWind)],
    [said.scatter, shown.scatter !== null && `${formats.number(shown.scatter)} s`],
    [said.ran, said.ranOf(formats.number(shown.ranDays ?? 0), formats.number(shown.neededDays ?? 0))],
    [said.blows, count(blowsPerDay(patternOf(view.clock)))],
  ] as const
  return (
    <div className="figures">
      {figures.map(
        ([label, value]) =>
          value !== false && (
            <div key={label}>
              <b>{value}</b>
              <span>{label}</span>
            </div>
          ),
      )}
    </div>
  )
}

/** What the log says, what it has still to show, and every trouble in it. */
function Verdict({ view }: { view: RunView }) {
  const { words, formats } = useShop()
  const { verdict, stillToShow, troubles } = view.run.figures
  const values = (given: Readonly<Record<string, string | number | null>>) => {
    const rounded = Object.entries(roundedValues(given))
    return Object.fromEntries(
      rounded.map(([key, value]) => [key, typeof value === 'number' ? formats.number(value) : value]),
    )
  }
  return (
    <section className="verdict" aria-label={words.shelf.verdict}>
      <p className="verdict-now">{words.verdicts[verdict.code](values(verdict.values))}</p>
      {stillToShow.length > 0 && (
        <>
          <h3>{words.shelf.stillToShow}</h3>
          <ul>
            {stillToShow.map(one => (
              <li key={one.code}>{words.stillToShow[one.code](values(one.values))}</li>
            ))}
          </ul>
        </>
      )}
      {troubles.length > 0 && (
        <>
          <h3>{words.shelf.troublesHeading}</h3>
          <ul>
            {troubles.map(({ kind, at, ...rest }) => (
              <li key={`${at} ${kind}`}>
                {formats.instant(at)}: {words.troubles[kind](values(rest))}
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="defer">{words.shelf.defer}</p>
    </section>
  )
}
