import { Link } from 'wouter'
import type { Period } from '../../core/calendar/period.ts'
import type { PaperKind, WorkingKind } from '../../core/papers/kinds.ts'
import { bridge } from '../bridge.ts'
import { useShop } from '../shop.tsx'
import { type SaidPaper, useSay } from './announcer.tsx'

/** Where an issued paper is served, on the size it was issued on. */
export const paperPath = (id: number) => `/papers/${id}.pdf`

/** Where a working paper is served as it was handed out, on the size it was handed out on. */
export const handedPath = (id: number) => `/papers/handed/${id}.pdf`

/** A period as addresses ask for it; nothing for all time. */
export const ofPeriod = (period: Period | null) => (period ? `?${new URLSearchParams({ ...period })}` : '')

/** Where a working paper is served as the ledger stands. `id` is of what its kind is drawn of. */
export const workingPath = (kind: WorkingKind, id: number, period: Period | null) =>
  `/papers/of/${kind}/${id}.pdf${ofPeriod(period)}`

/** The page of a working paper. */
export const workingPlace = (kind: WorkingKind, id: number, period: Period | null = null) =>
  `/paper/${kind}/${id}${ofPeriod(period)}`

/** Opens the paper at a path for printing: returns what the desktop's PDF program made of it, nothing from a browser's own viewer. */
async function openForPrinting(path: string) {
  if (bridge) return bridge.printPaper(path)
  window.open(path, '_blank', 'noopener')
  return undefined
}

/** Opens the paper at a path for printing and says what came of it. */
export function usePrint(): (path: string) => Promise<void> {
  const { outcomes } = useShop().words.screens.paper
  const say = useSay()
  return async path => {
    const outcome = await openForPrinting(path)
    if (outcome) say(outcome === 'done' ? outcomes.done.print : outcomes[outcome])
  }
}

/** Asks the desktop window to save the paper at a path. */
export function useSave(): (path: string) => Promise<void> {
  const { paper } = useShop().words.screens
  const say = useSay()
  return async path => {
    const outcome = await bridge?.savePaper(path)
    if (outcome) say(outcome === 'done' ? paper.outcomes.done.save : paper.outcomes[outcome])
  }
}

/** Opens the issued paper that came of an act for printing; what was said of the act stays, unless printing failed. */
export function usePrintPaper(): (id: number) => Promise<void> {
  const { outcomes } = useShop().words.screens.paper
  const say = useSay()
  return async id => {
    if ((await openForPrinting(paperPath(id))) === 'failed') say(outcomes.failed)
  }
}

/** Names an issued paper for the status strip that leads to it. */
export function useSaidPaper(): (kind: PaperKind, id: number, number: string) => SaidPaper {
  const { papers } = useShop().words
  return (kind, id, number) => ({
    place: `/accounts/paper/${id}`,
    title: papers.titleNumber(papers.titles[kind], number),
  })
}

/** One issued paper: view it, and in the desktop window print or save it. `title` names it, as in `Estimate 2207-2`. */
export function PaperLink({ id, title }: { id: number; title: string }) {
  const { paper } = useShop().words.screens
  const path = paperPath(id)
  const print = usePrint()
  const save = useSave()
  return (
    <span className="paper-links">
      <a href={path} target="_blank" rel="noopener" aria-label={paper.view(title)}>
        {title}
      </a>
      {bridge && (
        <>
          <button type="button" className="plain" aria-label={paper.print(title)} onClick={() => print(path)}>
            {paper.printShort}
          </button>
          <button type="button" className="plain" aria-label={paper.save(title)} onClick={() => save(path)}>
            {paper.saveShort}
          </button>
        </>
      )}
    </span>
  )
}

interface WorkingPaperLinkProps {
  readonly kind: WorkingKind
  /** Of the repair, estimate, run or owner it is about. */
  readonly id: number
  /** What tells it from another of its kind. */
  readonly about?: string
  /** Of which days it speaks, where it is not of all time. */
  readonly period?: Period
}

/** Leads to the page of a working paper, where it is shown, printed, saved, and kept as it is handed out. */
export function WorkingPaperLink({ kind, id, about, period }: WorkingPaperLinkProps) {
  const { titles } = useShop().words.papers
  return <Link href={workingPlace(kind, id, period)}>{[titles[kind], about].filter(Boolean).join(', ')}</Link>
}

/** Working papers, one below the other. */
export function WorkingPapers({ papers }: { papers: readonly WorkingPaperLinkProps[] }) {
  const { words } = useShop()
  return (
    <ul className="papers" aria-label={words.papers.drawnNow}>
      {papers.map(paper => (
        <li key={`${paper.kind} ${paper.id}`}>
          <WorkingPaperLink {...paper} />
        </li>
      ))}
    </ul>
  )
}
