import { Link } from 'wouter'
import { clockWords } from '../clock-words.ts'
import { Money } from '../parts/figures.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { Section } from '../parts/page.tsx'
import { PaperLink, WorkingPaperLink } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'
import { Quoted } from './estimate/quoted.tsx'
import { EstimateChanges } from './estimate-changes.tsx'
import { MoneyLines } from './money-lines.tsx'
import { estimateTitle, type Repair } from './repair.ts'

/** Every version of the estimate with its lines and working, the latest last. */
export function EstimatesSection({ view }: { view: Repair }) {
  const { estimates } = view
  const { repair } = useShop().words
  return (
    <Section title={repair.sections.estimates}>
      {estimates.length === 0 && <p className="quiet">{repair.noEstimates}</p>}
      {estimates.map(estimate => (
        <Estimate key={estimate.id} view={view} estimate={estimate} />
      ))}
    </Section>
  )
}

interface EstimateProps {
  readonly estimate: Repair['estimates'][number]
  readonly view: Repair
}

function Estimate({ view, estimate }: EstimateProps) {
  const { words, formats } = useShop()
  const { repair } = words
  const { writtenAt, sentAt, sentWay, validUntil, highMinor, documentId, number } = estimate
  const title = estimateTitle(words, estimate)
  const answered = view.words.some(word => word.estimateId === estimate.id)
  const facts = [
    repair.written(formats.instant(writtenAt)),
    sentAt && sentWay ? repair.sent(formats.instant(sentAt), words.ways[sentWay]) : repair.notSent,
    validUntil && repair.validUntil(formats.date(validUntil)),
    highMinor !== null && repair.upTo(formats.money(highMinor)),
  ]
  return (
    <article className="paper-in-short">
      <h3>{documentId === null ? title : <PaperLink id={documentId} title={title} />}</h3>
      <p className="quiet">{facts.filter(Boolean).join(' · ')}</p>
      <MoneyLines caption={title} lines={estimate.lines} priced={estimate.priced} />
      {!estimate.supplement && !answered && (
        <Quoted view={view} totalMinor={estimate.totalMinor} highMinor={highMinor} />
      )}
      {estimate.together.length > 1 && <Together estimate={estimate} />}
      <EstimateChanges estimate={estimate} all={view.estimates} />
      {estimate.remark && <p>{estimate.remark}</p>}
      {documentId !== null && (
        <p>
          <WorkingPaperLink kind="go-ahead" id={estimate.id} about={number} />
        </p>
      )}
    </article>
  )
}

/** Every clock on the estimate, what it comes to and what the owner said of it. */
function Together({ estimate: { together, togetherMinor } }: Pick<EstimateProps, 'estimate'>) {
  const { words } = useShop()
  const { repair } = words
  return (
    <div className="money-lines">
      <Ledger
        plain
        caption={repair.onThisEstimate}
        groups={[{ title: repair.onThisEstimate, rows: together }]}
        rowKey={one => one.estimateId}
        empty=""
        columns={[
          {
            label: repair.clockOnIt,
            kind: 'entry',
            cell: one => (
              <Link href={`/counter/${one.repairNumber}`}>
                {repair.title(one.repairNumber, clockWords(words, one.clock))}
              </Link>
            ),
          },
          {
            label: repair.answer,
            kind: 'text',
            cell: one => (one.answer ? repair.answers[one.answer] : repair.unanswered),
          },
          { label: repair.total, kind: 'figure', cell: one => <Money minor={one.totalMinor} /> },
        ]}
      />
      <dl className="sums-below">
        <div className="total">
          <dt>{repair.together}</dt>
          <dd>
            <Money minor={togetherMinor} />
          </dd>
        </div>
      </dl>
    </div>
  )
}

/** The owner's word: who, how, when and up to what sum. */
export function WordSection({ view: { words: spoken, limit } }: { view: Repair }) {
  const { words, formats } = useShop()
  const { repair } = words
  if (spoken.length === 0) return null
  return (
    <Section title={repair.sections.word}>
      <ul>
        {spoken.map(word => (
          <li key={word.id}>
            <b>{repair.answers[word.answer]}</b>{' '}
            {word.limitMinor !== null && repair.limitTo(formats.money(word.limitMinor))}
            <br />
            <small className="quiet">
              {repair.answered(word.who, words.ways[word.way], formats.instant(word.at))}
              {word.remark && ` · “${word.remark}”`}
            </small>
          </li>
        ))}
      </ul>
      {limit.agreedMinor !== null && (
        <p className="quiet">
          {repair.limit} {formats.money(limit.agreedMinor)}
        </p>
      )}
    </Section>
  )
}
