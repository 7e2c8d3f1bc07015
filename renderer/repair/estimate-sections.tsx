import { Section } from '../parts/page.tsx'
import { PaperLink, WorkingPaperLink } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'
import { EstimateChanges } from './estimate-changes.tsx'
import { MoneyLines } from './money-lines.tsx'
import type { Repair } from './repair.ts'

/** Every version of the estimate with its lines and working, the latest last. */
export function EstimatesSection({ view: { estimates } }: { view: Repair }) {
  const { repair } = useShop().words
  return (
    <Section title={repair.sections.estimates}>
      {estimates.length === 0 && <p className="quiet">{repair.noEstimates}</p>}
      {estimates.map(estimate => (
        <Estimate key={estimate.id} estimate={estimate} all={estimates} />
      ))}
    </Section>
  )
}

interface EstimateProps {
  readonly estimate: Repair['estimates'][number]
  readonly all: Repair['estimates']
}

function Estimate({ estimate, all }: EstimateProps) {
  const { words, formats } = useShop()
  const { repair } = words
  const { version, supplement, writtenAt, sentAt, sentWay, validUntil, highMinor, documentId, number } =
    estimate
  const title = repair.version(version, supplement)
  const facts = [
    repair.written(formats.instant(writtenAt)),
    sentAt && sentWay ? repair.sent(formats.instant(sentAt), words.ways[sentWay]) : repair.notSent,
    validUntil && repair.validUntil(formats.date(validUntil)),
    highMinor !== null && repair.upTo(formats.money(highMinor)),
  ]
  return (
    <article className="paper-in-short">
      <h3>{documentId === null ? title : <PaperLink id={documentId} title={`${title} (${number})`} />}</h3>
      <p className="quiet">{facts.filter(Boolean).join(' · ')}</p>
      <MoneyLines caption={title} lines={estimate.lines} priced={estimate.priced} />
      <EstimateChanges estimate={estimate} all={all} />
      {estimate.remark && <p>{estimate.remark}</p>}
      {documentId !== null && (
        <p>
          <WorkingPaperLink kind="go-ahead" id={estimate.id} about={number} />
        </p>
      )}
    </article>
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
