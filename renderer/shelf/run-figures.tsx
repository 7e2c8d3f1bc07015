import type { Fault } from '../../core/run-in/faults.ts'
import { patternOf } from '../../core/run-in/limits.ts'
import { shelfLog } from '../../core/run-in/log.ts'
import { blowsPerDay, roundedValues, shownFigures } from '../../core/run-in/shown.ts'
import { verdictValues } from '../../core/run-in/verdict.ts'
import { useShop } from '../shop.tsx'
import type { RunView } from './shelf.ts'

/** The figures of the log, each with its words; those not known are left out. */
export function Figures({ view }: { view: RunView }) {
  const { words, formats } = useShop()
  const { figures: said } = words.shelf
  const { run } = view
  const shown = shownFigures(run.figures, shelfLog(run.log))
  const seconds = (value: number | null) => value !== null && formats.signedSeconds(value)
  const unsigned = (value: number) => `${formats.number(value)} s`
  const count = (value: number | null) => value !== null && formats.number(value)
  const { suggest } = run.figures
  const figures = [
    [
      said.ratePerDay,
      shown.ratePerDay !== null && shown.plusMinus !== null
        ? said.plusMinus(formats.signedSeconds(shown.ratePerDay), formats.number(shown.plusMinus))
        : seconds(shown.ratePerDay),
    ],
    [said.scatter(unsigned(run.limits.steady)), shown.scatter !== null && unsigned(shown.scatter)],
    [
      said.observed,
      said.ofDays(formats.number(shown.observedDays ?? 0), formats.number(shown.neededDays ?? 0)),
    ],
    [said.secondsPerDayPerTurn, seconds(shown.secondsPerDayPerTurn)],
    [
      said.suggestion,
      suggest !== null &&
        shown.suggestedTurns !== null &&
        said.suggested[suggest.bob](formats.number(shown.suggestedTurns)),
    ],
    [said.trendOverWind, seconds(shown.trendOverWind)],
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

/** The values of a sentence, figures rounded and written the shop's way. */
function useValues() {
  const { formats } = useShop()
  return (given: Readonly<Record<string, string | number | null>>) =>
    Object.fromEntries(
      Object.entries(roundedValues(given)).map(([key, value]) => [
        key,
        typeof value === 'number' ? formats.number(value) : value,
      ]),
    )
}

/** What the log says, what it has still to show, and every fault in it. */
export function Verdict({ view }: { view: RunView }) {
  const { words, formats } = useShop()
  const { figures, limits } = view.run
  const values = useValues()
  const { faultAt, ...told } = verdictValues(figures, limits)
  const faultOn = faultAt && formats.instant(faultAt)
  const asksForTurn = figures.verdict === 'regulate' && figures.suggest === null
  return (
    <section className="verdict" aria-label={words.shelf.verdict}>
      <p className={`verdict-now ${figures.verdict}`}>
        {words.verdicts[figures.verdict](values({ ...told, faultOn }))}
      </p>
      {asksForTurn && <p>{words.shelf.turnAgain}</p>}
      {figures.toShow.length > 0 && (
        <>
          <h3>{words.shelf.stillToShow}</h3>
          <ul>
            {figures.toShow.map(one => (
              <li key={one.code}>{words.stillToShow[one.code](values(one.values))}</li>
            ))}
          </ul>
        </>
      )}
      <FaultList heading={words.shelf.faultsHeading} faults={figures.faults} />
      <FaultList heading={words.shelf.wrongsHeading} faults={figures.wrongs} />
      {figures.slips.length > 0 && (
        <p>{words.shelf.slips(figures.slips.map(at => formats.instant(at)).join(', '))}</p>
      )}
      <p className="defer">{words.shelf.defer}</p>
    </section>
  )
}

function FaultList({ heading, faults }: { heading: string; faults: readonly Fault[] }) {
  const { words, formats } = useShop()
  const values = useValues()
  if (faults.length === 0) return null
  return (
    <>
      <h3>{heading}</h3>
      <ul>
        {faults.map(({ kind, at, ...rest }) => (
          <li key={`${at} ${kind}`}>
            {formats.instant(at)}: {words.faults[kind](values(rest))}
          </li>
        ))}
      </ul>
    </>
  )
}
