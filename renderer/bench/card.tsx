import { useQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import { problemText } from '../../core/words/problem-text.ts'
import { answer, api } from '../api.ts'
import { clockWords } from '../clock-words.ts'
import { ActButton, useAct } from '../parts/act.tsx'
import { Asked } from '../parts/asked.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { DueDate } from '../parts/figures.tsx'
import { Page, Section } from '../parts/page.tsx'
import { WorkingPapers } from '../parts/paper-link.tsx'
import { Standing } from '../parts/standing.tsx'
import { timeWords } from '../parts/time-words.ts'
import { actWords, placeOfAct } from '../repair/act-names.ts'
import { type Repair, repairQuery } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import { FindingsSection } from './findings.tsx'
import { LabourSection } from './labour.tsx'
import { OutsideSection } from './outside.tsx'
import { PartsSection } from './parts.tsx'
import { ServiceSection } from './service.tsx'
import { WaitsSection } from './waits.tsx'

/** The card of one repair at the bench, with large targets. */
export function BenchCard({ number }: { number: string }) {
  const query = useQuery(repairQuery(number))
  return (
    <Asked query={query} title={number}>
      {view => <Shown view={view} />}
    </Asked>
  )
}

function Shown({ view }: { view: Repair }) {
  const { words } = useShop()
  const { card } = words.bench
  const { repair, clock, owner, bench } = view
  const { totalMinutes, agreedMinutes } = bench.labour
  const seen = allSeen(view)
  return (
    <Page
      title={card.title(repair.number, clockWords(words, clock))}
      subtitle={card.owner(owner.name, repair.fault)}
      date={repair.estimatedOn && <DueDate on={repair.estimatedOn} late={view.late} />}
      sums={[
        { figure: timeWords(words, totalMinutes), words: card.worked },
        ...(agreedMinutes === null ? [] : [{ figure: timeWords(words, agreedMinutes), words: card.agreed }]),
      ]}
    >
      <NextSection view={view} />
      <SeenCautions view={view} seen={seen} />
      <LabourSection view={view} mayStart={seen} />
      <ServiceSection view={view} />
      <FindingsSection view={view} />
      <PartsSection view={view} />
      <OutsideSection view={view} />
      <WaitsSection view={view} />
      <Section title={words.repair.sections.papers}>
        <WorkingPapers
          papers={[
            { kind: 'bench-card', id: repair.id },
            { kind: 'tags', id: repair.id },
          ]}
        />
      </Section>
    </Page>
  )
}

/** True when every caution that speaks of harm has been recorded as seen. */
const allSeen = ({ cautions, bench }: Repair): boolean =>
  cautions.every(
    ({ code, mustAcknowledge }) => !mustAcknowledge || bench.cautionsSeen.some(seen => seen.caution === code),
  )

/** Where the repair stands, and the ways on from here. */
function NextSection({ view }: { view: Repair }) {
  const { words } = useShop()
  const { card } = words.bench
  const { standing, repair } = view
  const [next] = standing.next
  const blocked = standing.blocked.find(({ act }) => act === 'start-run-in')
  const onShelf = standing.stage === 'running-in' || standing.next.includes('start-run-in')
  return (
    <Section title={card.standing}>
      <div className="standing-bar">
        <p className="standing-now">
          <Standing stage={standing.stage} waitingFor={standing.waitingFor} />
        </p>
        {standing.waitingFor === 'owner' && next && next !== 'end-wait' && (
          <Link className="button" href={placeOfAct(next, '/counter', repair.number)}>
            {next === 'write-estimate' ? card.toSupplement : actWords(words, next)}
          </Link>
        )}
        {onShelf && (
          <Link className="button" href={`/shelf/${repair.number}`}>
            {card.toShelf}
          </Link>
        )}
        <Link className="button second" href={`/counter/${repair.number}`}>
          {card.toCounter}
        </Link>
        <Link className="button second" href="/bench">
          {card.toQueue}
        </Link>
      </div>
      {!onShelf && blocked && (
        <p className="quiet">
          {card.toShelf}: {problemText(words, { code: blocked.code, field: '' })}
        </p>
      )}
    </Section>
  )
}

/** The cautions of the clock; those of harm must be recorded as seen before the labour clock starts. */
function SeenCautions({ view, seen }: { view: Repair; seen: boolean }) {
  const { words, formats, people } = useShop()
  const { card, running } = words.bench
  const act = useAct((input: { repairId: number }) => answer(api.bench.acknowledge.$post({ json: input })), {
    said: () => card.acknowledged,
  })
  if (view.cautions.length === 0) return null
  const first = view.bench.cautionsSeen[0]
  const who = people.find(({ id }) => id === first?.personId)?.name ?? running.nobody
  return (
    <Section title={words.screens.caution.label}>
      <Cautions codes={view.cautions.map(({ code }) => code)} />
      <p>
        {card.springs}: {words.springStates[view.repair.springs]}
      </p>
      {seen && first && <p className="quiet">{card.seen(who, formats.instant(first.at))}</p>}
      {!seen && (
        <>
          <p>{card.mustAcknowledge}</p>
          <div className="buttons">
            <ActButton act={act} input={{ repairId: view.repair.id }}>
              {card.acknowledge}
            </ActButton>
          </div>
        </>
      )}
    </Section>
  )
}
