import { bridge } from '../bridge.ts'
import { useShop } from '../shop.tsx'
import { useSay } from './announcer.tsx'

/** Where a paper is served, in the shop's paper size. */
export const paperPath = (id: number, size: 'a4' | 'letter') => `/papers/${id}.pdf?size=${size}`

/** Opens a paper for printing: through the desktop's PDF program, or in the browser's own viewer. */
export function usePrintPaper(): (id: number) => Promise<void> {
  const { settings, words } = useShop()
  const say = useSay()
  return async id => {
    const path = paperPath(id, settings.place.paper)
    if (!bridge) return void window.open(path, '_blank', 'noopener')
    const outcome = await bridge.printPaper(path)
    say(outcome === 'done' ? words.screens.paper.outcomes.done.print : words.screens.paper.outcomes[outcome])
  }
}

/** One paper: view it, and in the desktop window print or save it. `title` names it, as in `Estimate 2207-2`. */
export function PaperLink({ id, title }: { id: number; title: string }) {
  const { settings, words } = useShop()
  const { paper } = words.screens
  const say = useSay()
  const print = usePrintPaper()
  const path = paperPath(id, settings.place.paper)
  const save = async () => {
    const outcome = await bridge?.savePaper(path)
    if (outcome) say(outcome === 'done' ? paper.outcomes.done.save : paper.outcomes[outcome])
  }
  return (
    <span className="paper-links">
      <a href={path} target="_blank" rel="noopener" aria-label={paper.view(title)}>
        {title}
      </a>
      {bridge && (
        <>
          <button type="button" className="plain" aria-label={paper.print(title)} onClick={() => print(id)}>
            {paper.printShort}
          </button>
          <button type="button" className="plain" aria-label={paper.save(title)} onClick={save}>
            {paper.saveShort}
          </button>
        </>
      )}
    </span>
  )
}
