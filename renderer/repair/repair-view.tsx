import { useQuery } from '@tanstack/react-query'
import { useLocation } from 'wouter'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { problemText } from '../../core/words/problem-text.ts'
import { Refused } from '../api.ts'
import { clockWords } from '../clock-words.ts'
import { CivilDate, DueDate, Money } from '../parts/figures.tsx'
import { Page, Section, type Sum } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { actWords } from './act-names.ts'
import { EstimatesSection, WordSection } from './estimate-sections.tsx'
import { forms } from './forms.ts'
import { ClockSection, IntakeSection, OwnerSection } from './intake-sections.tsx'
import { MessagesSection } from './messages-section.tsx'
import { EarlierSection, HandOverSection, MoneySection, PapersSection } from './money-sections.tsx'
import { dueMinor, type Repair, repairQuery } from './repair.ts'
import { RunsSection } from './runs-section.tsx'
import { StandingBar } from './standing-bar.tsx'
import { Taken } from './taken.tsx'
import { WarrantySection } from './warranty-section.tsx'

interface RepairViewProps {
  /** The repair's number as it stands in the address. */
  readonly number: string
  /** The act whose form is open, from the address. */
  readonly act?: string | undefined
  /** The page it is shown on: its addresses are `base/number` and `base/number/act`. */
  readonly base: string
}

/** One repair with everything on it in reading order, its standing and its next act on top. */
export function RepairView({ number, act, base }: RepairViewProps) {
  const { words } = useShop()
  const { data, error } = useQuery(repairQuery(number))
  if (error)
    return (
      <Page title={number}>
        <p className="aside-words">{error instanceof Refused ? error.message : words.screens.unreachable}</p>
      </Page>
    )
  return data && <Shown view={data} act={act} base={base} />
}

function useSums(view: Repair): Sum[] {
  const { words } = useShop()
  const { repair } = words
  const due = dueMinor(view)
  const { heldMinor: held, accountMinor: account } = view.money
  return [
    ...(view.repair.estimatedOn
      ? [{ figure: <DueDate on={view.repair.estimatedOn} late={view.late} />, words: repair.estimatedOn }]
      : []),
    ...(due > 0 ? [{ figure: <Money minor={due} sign />, words: repair.toPay }] : []),
    ...(held > 0 ? [{ figure: <Money minor={held} sign />, words: repair.held }] : []),
    ...(account > 0 ? [{ figure: <Money minor={account} sign />, words: repair.onAccount }] : []),
  ]
}

function Shown({ view, act, base }: { view: Repair; act: string | undefined; base: string }) {
  const { words, settings } = useShop()
  const [, navigate] = useLocation()
  const { repair, clock, owner } = view
  const blocked = view.standing.blocked.find(one => one.act === act)
  const place = `${base}/${repair.number}`
  const Form = act === undefined || blocked ? undefined : forms[act as keyof typeof forms]
  return (
    <Page
      title={words.repair.title(repair.number, clockWords(words, clock))}
      subtitle={owner.name}
      date={
        <>
          {words.repair.takenIn}
          <br />
          <CivilDate on={civilDateOf(repair.takenInAt, settings.place.timeZone)} />
        </>
      }
      sums={useSums(view)}
    >
      <StandingBar view={view} base={base} doing={Form && act} />
      {blocked && (
        <Section title={actWords(words, blocked.act)}>
          <p>{problemText(words, { code: blocked.code, field: '' })}</p>
        </Section>
      )}
      {Form && <Form key={act} view={view} place={place} close={() => navigate(place)} />}
      {!Form && <Taken />}
      <OwnerSection view={view} />
      <ClockSection view={view} />
      <IntakeSection view={view} />
      <MessagesSection view={view} />
      <EstimatesSection view={view} />
      <WordSection view={view} />
      <RunsSection view={view} />
      <MoneySection view={view} />
      <PapersSection view={view} />
      <WarrantySection view={view} />
      <HandOverSection view={view} />
      <EarlierSection view={view} />
    </Page>
  )
}
