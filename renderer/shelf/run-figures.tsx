import { patternOf } from '../../core/run-in/limits.ts'
import { blowsPerDay, roundedValues, shownFigures } from '../../core/run-in/shown.ts'
import { useShop } from '../shop.tsx'
import type { RunView } from './shelf.ts'

/** The figures of the log, each with its words; those not known are left out. */
export function Figures({ view }: { view: RunView }) {
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
export function Verdict({ view }: { view: RunView }) {
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
