import type { PaperKind } from '../../core/papers/contents.ts'
import type { WorkingKind } from '../../core/papers/working.ts'
import { bridge } from '../bridge.ts'
import { useShop } from '../shop.tsx'
import { type SaidPaper, useSay } from './announcer.tsx'

/** Where an issued paper is served, on the size it was issued on. */
export const paperPath = (id: number) => `/papers/${id}.pdf`

/** Opens the paper at a path for printing: through the desktop's PDF program, or in the browser's own viewer. */
export function usePrint(): (path: string) => Promise<void> {
  const { words } = useShop()
  const say = useSay()
  return async path => {
    if (!bridge) return void window.open(path, '_blank', 'noopener')
    const outcome = await bridge.printPaper(path)
    say(outcome === 'done' ? words.screens.paper.outcomes.done.print : words.screens.paper.outcomes[outcome])
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

/** Opens an issued paper for printing. */
export function usePrintPaper(): (id: number) => Promise<void> {
  const print = usePrint()
  return id => print(paperPath(id))
}

/** Names an issued paper for the status strip that leads to it. */
export function useSaidPaper(): (kind: PaperKind, id: number, number: string) => SaidPaper {
  const { papers } = useShop().words
  return (kind, id, number) => ({ id, title: papers.titleNumber(papers.titles[kind], number) })
}

interface PathLinkProps {
  readonly path: string
  readonly title: string
}

/** The paper at a path: view it, and in the desktop window print or save it. */
function PathLink({ path, title }: PathLinkProps) {
  const { paper } = useShop().words.screens
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

/** One issued paper. `title` names it, as in `Estimate 2207-2`. */
export function PaperLink({ id, title }: { id: number; title: string }) {
  return <PathLink path={paperPath(id)} title={title} />
}

interface WorkingPaperLinkProps {
  readonly kind: WorkingKind
  /** Of the repair, estimate, run or owner it is about. */
  readonly id: number
  /** What tells it from another of its kind. */
  readonly about?: string
  /** Of which days it speaks, where it is not of all time. */
  readonly period?: { readonly from: string; readonly to: string }
}

/** One working paper, drawn from the ledger when it is opened, on its usual size. */
export function WorkingPaperLink({ kind, id, about, period }: WorkingPaperLinkProps) {
  const { titles } = useShop().words.papers
  const title = [titles[kind], about].filter(Boolean).join(', ')
  const asked = period ? `?${new URLSearchParams({ ...period })}` : ''
  return <PathLink path={`/papers/of/${kind}/${id}.pdf${asked}`} title={title} />
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
