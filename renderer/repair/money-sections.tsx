import { Link } from 'wouter'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { isToCollect } from '../../core/standing/stages.ts'
import type { Formats } from '../../core/words/format.ts'
import { CivilDate, Money } from '../parts/figures.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { Facts, Section } from '../parts/page.tsx'
import { PaperLink, WorkingPaperLink, WorkingPapers } from '../parts/paper-link.tsx'
import { Standing } from '../parts/standing.tsx'
import { useShop } from '../shop.tsx'
import { estimateTitle, type Repair } from './repair.ts'

/** What was billed and paid, and what is due. */
export function MoneySection({ view: { money } }: { view: Repair }) {
  const { words } = useShop()
  const { repair } = words
  const { payments, writeOffs, balance } = money
  if (payments.length === 0 && balance.billed === 0) return null
  return (
    <Section title={repair.sections.money}>
      <div className="money-lines">
        <Ledger
          plain
          caption={repair.payments}
          groups={[{ title: '', rows: payments }]}
          rowKey={payment => payment.id}
          empty={repair.noPayments}
          columns={[
            { label: repair.date, kind: 'text', cell: payment => <CivilDate on={payment.onDate} /> },
            { label: repair.method, kind: 'text', cell: payment => words.paymentMethods[payment.method] },
            { label: repair.reference, kind: 'entry', cell: payment => payment.reference },
            { label: repair.amount, kind: 'figure', cell: payment => <Money minor={payment.amountMinor} /> },
          ]}
        />
        {writeOffs.length > 0 && <WriteOffs writeOffs={writeOffs} />}
      </div>
      <dl className="sums-below">
        {[
          [repair.billed, balance.billed] as const,
          [repair.paid, balance.paid] as const,
          ...(balance.writtenOff === 0 ? [] : [[repair.writtenOff, balance.writtenOff] as const]),
          ...(balance.rounded === 0 ? [] : [[repair.rounded, balance.rounded] as const]),
          [repair.due, balance.due] as const,
        ].map(([name, minor]) => (
          <div key={name} className={name === repair.due ? 'total' : undefined}>
            <dt>{name}</dt>
            <dd>
              <Money minor={minor} />
            </dd>
          </div>
        ))}
      </dl>
    </Section>
  )
}

/** What was taken off what is owed without money. */
function WriteOffs({ writeOffs }: Pick<Repair['money'], 'writeOffs'>) {
  const { words } = useShop()
  const { repair } = words
  return (
    <Ledger
      plain
      caption={repair.writeOffs}
      groups={[{ title: '', rows: writeOffs }]}
      rowKey={one => one.id}
      empty={repair.noPayments}
      columns={[
        { label: repair.date, kind: 'text', cell: one => <CivilDate on={one.onDate} /> },
        { label: repair.writtenOff, kind: 'text', cell: one => words.writeOffKinds[one.kind] },
        { label: repair.why, kind: 'entry', cell: one => one.reason },
        { label: repair.amount, kind: 'figure', cell: one => <Money minor={one.amountMinor} /> },
      ]}
    />
  )
}

const always = ['tags', 'condition-report', 'bench-card', 'hand-over'] as const
const whileReady = ['ready-letter', 'uncollected-letter'] as const

/** The working papers a repair has now: one for each run on the shelf, letters once it may be collected. */
function workingPapers({ repair, runs }: Repair, write: Formats) {
  const ready = isToCollect(repair.stage)
  return [
    ...[...always, ...(ready ? whileReady : [])].map(kind => ({ kind, id: repair.id })),
    ...runs.map(({ id, startedOn }) => ({
      kind: 'run-in-certificate' as const,
      id,
      about: write.date(startedOn),
    })),
  ]
}

/** Every paper issued on this repair, and those that are drawn from it as it stands. */
export function PapersSection({ view }: { view: Repair }) {
  const { documents, estimates } = view
  const { words, formats } = useShop()
  const { repair, papers } = words
  const titled = ({ id, kind, number }: Repair['documents'][number]) => {
    const estimate = estimates.find(one => one.documentId === id)
    return estimate ? estimateTitle(words, estimate) : papers.titleNumber(papers.titles[kind], number)
  }
  return (
    <Section title={repair.sections.papers}>
      {documents.length === 0 && <p className="quiet">{repair.noPapers}</p>}
      <ul className="papers">
        {documents.map(document => (
          <li key={document.id}>
            <PaperLink id={document.id} title={titled(document)} />{' '}
            <small className="quiet">
              <CivilDate on={document.issuedOn} />
            </small>
          </li>
        ))}
      </ul>
      <h3>{papers.drawnNow}</h3>
      <WorkingPapers papers={workingPapers(view, formats)} />
    </Section>
  )
}

/** To whom the clock went. */
export function HandOverSection({ view: { handOver, repair: of } }: { view: Repair }) {
  const { words, formats } = useShop()
  const { repair } = words
  if (!handOver) return null
  return (
    <Section title={repair.sections.handOver}>
      <Facts
        facts={[
          [repair.handOverForm.toName, repair.collectedBy(handOver.toName, formats.instant(handOver.at))],
          [repair.authority, handOver.authority],
          [repair.handOverForm.unpaidReason, handOver.unpaidReason],
          [words.accounts.paper.section, <WorkingPaperLink key="receipt" kind="hand-over" id={of.id} />],
        ]}
      />
    </Section>
  )
}

/** Earlier visits of the same clock, the latest first. */
export function EarlierSection({ view: { earlier } }: { view: Repair }) {
  const { words, formats, settings } = useShop()
  const { repair } = words
  if (earlier.length === 0) return null
  return (
    <Section title={repair.sections.earlier}>
      <ul className="visits">
        {earlier.map(visit => (
          <li key={visit.id}>
            <Link href={`/counter/${visit.number}`}>{visit.number}</Link>{' '}
            <CivilDate on={civilDateOf(visit.takenInAt, settings.place.timeZone)} /> · {visit.fault}{' '}
            <Standing stage={visit.stage} />{' '}
            {visit.cover && (
              <small className="quiet">
                {visit.cover.covered ? repair.covered(formats.date(visit.cover.lastDay)) : repair.notCovered}
              </small>
            )}
          </li>
        ))}
      </ul>
    </Section>
  )
}
