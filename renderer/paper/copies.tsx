import { Link } from 'wouter'
import type { Period } from '../../core/calendar/period.ts'
import type { PaperSize } from '../../core/papers/sizes.ts'
import { answer, api } from '../api.ts'
import { ActButton, useAct } from '../parts/act.tsx'
import { Section } from '../parts/page.tsx'
import { ofPeriod } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'
import { type Copy, paperTitle, type WorkingPaper } from './paper.ts'

/** The page of a copy that was handed out. */
const copyPlace = (kind: WorkingPaper['kind'], id: number, period: Period | null, copy: number) =>
  `/paper/${kind}/${id}/${copy}${ofPeriod(period)}`

interface KeepCopyProps {
  readonly view: WorkingPaper
  readonly id: number
  readonly period: Period | null
  readonly size: PaperSize
}

/** Says that the owner was given the paper as it stands, so that what it says now is kept. */
export function KeepCopy({ view, id, period, size }: KeepCopyProps) {
  const { words } = useShop()
  const { copies } = words.papers
  const act = useAct(
    (input: Parameters<typeof api.papers.handOut.$post>[0]['json']) =>
      answer(api.papers.handOut.$post({ json: input })),
    {
      said: () => copies.kept(paperTitle(words, view)),
      papers: kept => [{ place: copyPlace(view.kind, id, period, kept.id), title: copies.theCopy }],
    },
  )
  return (
    <ActButton act={act} input={{ kind: view.kind, id, size, period }}>
      {copies.keep}
    </ActButton>
  )
}

interface CopiesProps extends Pick<KeepCopyProps, 'view' | 'id' | 'period'> {
  /** The one that is shown; none where the paper is, as the ledger stands. */
  readonly shown: Copy | undefined
}

/** Every copy that was handed out, the latest first. */
export function Copies({ view: { kind, copies }, id, period, shown }: CopiesProps) {
  const said = useShop().words.papers.copies
  return (
    <Section title={said.title}>
      {copies.length === 0 && <p className="quiet">{said.none}</p>}
      <ul className="papers">
        {copies.map(copy => (
          <li key={copy.id}>
            <CopyLine copy={copy} place={copy === shown ? null : copyPlace(kind, id, period, copy.id)} />
          </li>
        ))}
      </ul>
    </Section>
  )
}

/** One copy, leading to its page unless that is the page shown. */
function CopyLine({ copy, place }: { copy: Copy; place: string | null }) {
  const { words, formats } = useShop()
  const { copies, sizes, statement } = words.papers
  const { handedAt, size, person, period, drawn } = copy
  const details = [
    sizes[size],
    period && statement.periodSaid(formats.date(period.from), formats.date(period.to)),
    person && copies.by(person),
  ]
  return (
    <>
      {place === null ? (
        <b>{formats.instant(handedAt)}</b>
      ) : (
        <Link href={place}>{formats.instant(handedAt)}</Link>
      )}{' '}
      <small className="quiet">{details.filter(Boolean).join(' · ')}</small>{' '}
      {drawn && drawn.state !== 'kept' && <b className="late">{copies.states[drawn.state]}</b>}
    </>
  )
}
