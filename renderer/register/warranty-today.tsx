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
      {visit ? <Cover visit={visit} /> : <p className="quiet">{said.none}</p>}
      <NextAct view={view} visit={visit} />
    </Section>
  )
}

function Cover({ visit: { repair, cover, warranty } }: { visit: Visit }) {
  const { words, formats } = useShop()
  const said = words.register.clock
  if (!cover) return null
  return (
    <div className="cover">
      <p className={cover.covered ? 'cover-answer' : 'cover-answer not'}>
        {cover.covered ? said.covered(repair.number) : said.notCovered(repair.number)}
      </p>
      <ul className="reasons" aria-label={said.why}>
        {cover.reasons.map(reason => (
          <li key={reason.code}>{coverReason(words, formats, reason)}</li>
        ))}
        {cover.covered && <li>{said.daysLeft(cover.daysLeft)}</li>}
      </ul>
      {warranty && warranty.exclusions.length > 0 && (
        <details>
          <summary>{said.excludes}</summary>
          <ul className="reasons">
            {warranty.exclusions.map(exclusion => (
              <li key={exclusion}>{words.exclusions[exclusion]}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}

/** A clock in the shop leads to its repair; one that is not, to taking it in, as a comeback where there is a warranty. */
function NextAct({ view, visit }: { view: ClockView; visit: Visit | undefined }) {
  const said = useShop().words.register.clock
  if (view.inShop !== null)
    return (
      <p>
        {said.inShop(view.inShop)}{' '}
        <Link href={`/counter/${view.inShop}`}>{said.openRepair(view.inShop)}</Link>
      </p>
    )
  return (
    <div className="buttons">
      {visit ? (
        <Link className="button" href={`/counter/take-in?comeback=${visit.repair.number}`}>
          {said.comebackOf(visit.repair.number)}
        </Link>
      ) : (
        <Link className="button" href={`/counter/take-in?clock=${view.clock.id}`}>
          {said.takeIn}
        </Link>
      )}
    </div>
  )
}
