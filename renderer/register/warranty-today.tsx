import './cover.css'
import { Link } from 'wouter'
import { Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { type ClockView, coverReason, type Visit } from './clock.ts'

/** A visit whose warranty was given. */
const warranted = ({ visits }: ClockView) => visits.find(({ cover }) => cover !== null)

/** Whether the clock is covered today and why, and the way to a comeback. */
export function WarrantyToday({ view }: { view: ClockView }) {
  const said = useShop().words.register.clock
  const visit = warranted(view)
  return (
    <Section title={said.warranty}>
      {visit?.cover ? (
        <Cover
          number={visit.repair.number}
          cover={visit.cover}
          exclusions={visit.warranty?.exclusions ?? []}
        />
      ) : (
        <p className="quiet">{said.none}</p>
      )}
      <AgainHere inShop={view.inShop} clockId={view.clock.id} comebackOf={visit?.repair.number ?? null} />
    </Section>
  )
}

interface CoverProps {
  /** Of the repair that the warranty was given for. */
  readonly number: number
  readonly cover: NonNullable<Visit['cover']>
  readonly exclusions: NonNullable<Visit['warranty']>['exclusions']
}

/** Whether a repair's warranty covers today, every reason, and what it leaves out. */
export function Cover({ number, cover, exclusions }: CoverProps) {
  const { words, formats } = useShop()
  const said = words.register.clock
  return (
    <div className="cover">
      <p className={cover.covered ? 'cover-answer' : 'cover-answer not'}>
        {cover.covered ? said.covered(number) : said.notCovered(number)}
      </p>
      <ul className="reasons" aria-label={said.why}>
        {cover.reasons.map(reason => (
          <li key={reason.code}>{coverReason(words, formats, reason)}</li>
        ))}
        {cover.covered && <li>{said.daysLeft(cover.daysLeft)}</li>}
      </ul>
      {exclusions.length > 0 && (
        <details>
          <summary>{said.excludes}</summary>
          <ul className="reasons">
            {exclusions.map(exclusion => (
              <li key={exclusion}>{words.exclusions[exclusion]}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}

interface AgainProps {
  /** The number of the repair the clock is in the shop for. */
  readonly inShop: number | null
  readonly clockId: number
  /** The repair whose warranty a comeback would fall under. */
  readonly comebackOf: number | null
}

/** A clock in the shop leads to its repair; one that is not, to taking it in, as a comeback where there is a warranty. */
export function AgainHere({ inShop, clockId, comebackOf }: AgainProps) {
  const said = useShop().words.register.clock
  if (inShop !== null)
    return (
      <p>
        {said.inShop(inShop)} <Link href={`/counter/${inShop}`}>{said.openRepair(inShop)}</Link>
      </p>
    )
  return (
    <div className="buttons">
      {comebackOf !== null ? (
        <Link className="button" href={`/counter/take-in?comeback=${comebackOf}`}>
          {said.comebackOf(comebackOf)}
        </Link>
      ) : (
        <Link className="button" href={`/counter/take-in?clock=${clockId}`}>
          {said.takeIn}
        </Link>
      )}
    </div>
  )
}
