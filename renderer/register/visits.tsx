import { Link } from 'wouter'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Words } from '../../core/words/en/index.ts'
import type { Formats } from '../../core/words/format.ts'
import { CivilDate } from '../parts/figures.tsx'
import { Facts, Section } from '../parts/page.tsx'
import { Standing } from '../parts/standing.tsx'
import { useShop } from '../shop.tsx'
import { type ClockView, coverReason, type Visit } from './clock.ts'

/** Every visit of the clock, the latest first: why it came, what was found and used, its papers and its warranty. */
export function Visits({ view: { visits } }: { view: ClockView }) {
  const said = useShop().words.register.clock
  return (
    <Section title={said.history}>
      {visits.length === 0 && <p className="quiet">{said.noVisits}</p>}
      {visits.map(visit => (
        <OneVisit key={visit.repair.id} visit={visit} />
      ))}
    </Section>
  )
}

/** What a visit's warranty says today: to when it covers, or every reason why not. */
function termWords(words: Words, formats: Formats, { cover }: Visit): string {
  if (!cover) return ''
  if (cover.covered) return words.register.clock.coveredTo(formats.date(cover.lastDay))
  const against = cover.reasons.filter(({ code }) => code !== 'inTerm' && code !== 'paused')
  return against.map(reason => coverReason(words, formats, reason)).join(' ')
}

function OneVisit({ visit }: { visit: Visit }) {
  const { words, formats, settings } = useShop()
  const said = words.register.clock
  const { repair, comebackOf, findings, parts, documents } = visit
  const takenOn = civilDateOf(repair.takenInAt, settings.place.timeZone)
  return (
    <article className="visit" aria-label={said.visit(repair.number)}>
      <header>
        <h3>
          <Link href={`/counter/${repair.number}`}>{said.visit(repair.number)}</Link>
        </h3>
        <CivilDate on={takenOn} />
        <Standing stage={repair.stage} />
        {comebackOf !== null && (
          <span className="quiet">
            {[said.comesBackOf(comebackOf), repair.covered && said.coveredThen].filter(Boolean).join(', ')}
          </span>
        )}
      </header>
      <Facts
        facts={[
          [
            said.fault,
            <span key="fault" className="several-lines">
              {repair.fault}
            </span>,
          ],
          [said.work, words.scopes[repair.scope]],
          [said.findings, findings.length > 0 && <Findings findings={findings} />],
          [said.parts, parts.map(part => `${part.used} × ${part.name}`).join(', ')],
          [said.term, termWords(words, formats, visit)],
          [said.papers, documents.length > 0 && <Papers documents={documents} />],
        ]}
      />
    </article>
  )
}

/** What was found at the bench; what was struck out stays legible with its reason. */
function Findings({ findings }: { findings: Visit['findings'] }) {
  const { words } = useShop()
  return (
    <ul>
      {findings.map(({ id, component, text, struckReason }) => (
        <li key={id}>
          {struckReason ? (
            <>
              <s className="struck">{`${words.components[component]}: ${text}`}</s>{' '}
              <small className="quiet">{words.screens.struck(struckReason)}</small>
            </>
          ) : (
            `${words.components[component]}: ${text}`
          )}
        </li>
      ))}
    </ul>
  )
}

function Papers({ documents }: { documents: Visit['documents'] }) {
  const { papers } = useShop().words
  return (
    <ul className="inline-list">
      {documents.map(({ id, kind, number }) => (
        <li key={id}>
          <Link href={`/accounts/paper/${id}`}>{papers.titleNumber(papers.titles[kind], number)}</Link>
        </li>
      ))}
    </ul>
  )
}
