import { useQuery } from '@tanstack/react-query'
import { Link, Route, useSearchParams } from 'wouter'
import type { Period } from '../../core/calendar/period.ts'
import { goesHome, type WorkingKind, workingKinds } from '../../core/papers/kinds.ts'
import { usualSize } from '../../core/papers/sizes.ts'
import { problemText } from '../../core/words/problem-text.ts'
import { clockWords } from '../clock-words.ts'
import { Asked } from '../parts/asked.tsx'
import { CivilDate } from '../parts/figures.tsx'
import { Facts, Page, Section } from '../parts/page.tsx'
import { PaperItself } from '../parts/paper-itself.tsx'
import { handedPath, ofPeriod, workingPath, workingPlace } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'
import { Copies, KeepCopy } from './copies.tsx'
import { type Copy, paperTitle, type WorkingPaper, workingPaperQuery } from './paper.ts'

/** A working paper as the ledger stands, and as it was each time it was handed out. */
export default function WorkingPapers() {
  return (
    <Route path="/paper/:kind/:id/:copy?">
      {({ kind, id, copy }) => <WorkingPaperPage kind={kind as WorkingKind} id={id} copy={copy} />}
    </Route>
  )
}

function useAskedPeriod(): Period | null {
  const [asked] = useSearchParams()
  const [from, to] = [asked.get('from'), asked.get('to')]
  return from && to ? { from, to } : null
}

function WorkingPaperPage({ kind, id, copy }: { kind: WorkingKind; id: string; copy: string | undefined }) {
  const { words } = useShop()
  const period = useAskedPeriod()
  const query = useQuery(workingPaperQuery(kind, id, period))
  return (
    <Asked query={query} title={words.papers.drawnNow}>
      {view => {
        const shown = view.copies.find(one => String(one.id) === copy)
        if (copy !== undefined && !shown) return <NoSuchCopy title={paperTitle(words, view)} />
        return <Shown view={view} id={Number(id)} period={period} copy={shown} />
      }}
    </Asked>
  )
}

function NoSuchCopy({ title }: { title: string }) {
  const { words } = useShop()
  return (
    <Page title={title}>
      <p className="aside-words">{problemText(words, { code: 'document.unknown', field: '' })}</p>
    </Page>
  )
}

interface ShownProps {
  readonly view: WorkingPaper
  /** Of what its kind is drawn of. */
  readonly id: number
  readonly period: Period | null
  /** The copy that is shown; the paper as the ledger stands where it is left out. */
  readonly copy: Copy | undefined
}

function Shown({ view, id, period, copy }: ShownProps) {
  const { words, formats, today } = useShop()
  const { now, ofCopy } = words.papers.copies
  return (
    <Page
      title={paperTitle(words, view)}
      subtitle={copy ? ofCopy(formats.date(copy.handedOn)) : now}
      date={<CivilDate on={copy?.handedOn ?? today} />}
    >
      <About view={view} id={id} period={period} copy={copy} />
      {goesHome(view.kind) && (view.copies.length > 0 || view.against.length === 0) && (
        <Copies view={view} id={id} period={period} shown={copy} />
      )}
      {copy ? <AsHanded view={view} copy={copy} /> : <AsItStands view={view} id={id} period={period} />}
    </Page>
  )
}

/** Whose paper it is, of which clock and repair, and of which days it speaks, with the ways back. */
function About({ view: { kind, owner, repair, startedOn }, id, period, copy }: ShownProps) {
  const { words, formats } = useShop()
  const { accounts, papers } = words
  const days = copy ? copy.period : period
  return (
    <Section title={accounts.paper.section}>
      <Facts
        facts={[
          [
            accounts.paper.owner,
            <Link key="owner" href={`/register/owner/${owner.id}`}>
              {owner.name}
            </Link>,
          ],
          [accounts.paper.repair, repair && <Link href={`/counter/${repair.number}`}>{repair.number}</Link>],
          [accounts.paper.clock, repair && clockWords(words, repair.clock)],
          [papers.copies.startedOn, startedOn && <CivilDate on={startedOn} />],
          [
            papers.copies.account,
            workingKinds[kind].of === 'owner' && (
              <Link href={`/accounts/owner/${owner.id}${ofPeriod(days)}`}>
                {days
                  ? papers.statement.periodSaid(formats.date(days.from), formats.date(days.to))
                  : papers.copies.allDays}
              </Link>
            ),
          ],
          [
            papers.copies.alsoNow,
            copy && <Link href={workingPlace(kind, id, period)}>{papers.drawnNow}</Link>,
          ],
        ]}
      />
    </Section>
  )
}

/** The paper as the ledger stands, or why it cannot be drawn now. */
function AsItStands({ view, id, period }: Omit<ShownProps, 'copy'>) {
  const { words, settings } = useShop()
  const { kind, against } = view
  if (against.length > 0)
    return (
      <Section title={words.papers.onPage.section}>
        {against.map(({ code, message }) => (
          <p key={code}>{message}</p>
        ))}
      </Section>
    )
  return (
    <PaperItself
      kind={kind}
      title={paperTitle(words, view)}
      path={workingPath(kind, id, period)}
      size={usualSize(kind, settings.place.paper)}
      acts={size => goesHome(kind) && <KeepCopy view={view} id={id} period={period} size={size} />}
    />
  )
}

/** A copy that was handed out: the very bytes that were kept. */
function AsHanded({ view, copy }: { view: WorkingPaper; copy: Copy }) {
  const { words } = useShop()
  return (
    <PaperItself
      kind={view.kind}
      title={paperTitle(words, view)}
      path={handedPath(copy.id)}
      size={copy.size}
      drawn={copy.drawn}
    />
  )
}
