import { usualSize } from '../../core/papers/sizes.ts'
import { Facts, Section } from '../parts/page.tsx'
import { paperPath } from '../parts/paper-link.tsx'
import { PaperPreview } from '../parts/paper-preview.tsx'
import { useShop } from '../shop.tsx'
import type { PaperView } from './paper.ts'

/** The paper as it was issued: shown, and what is known of its file; named where that is missing or damaged. */
export function PaperItself({ view: { paper, drawn }, title }: { view: PaperView; title: string }) {
  const { words, settings } = useShop()
  const { onPage } = words.papers
  const size = drawn?.size ?? usualSize(paper.kind, settings.place.paper)
  return (
    <Section title={onPage.section}>
      {drawn && drawn.state !== 'kept' && <p className="late">{onPage[drawn.state]}</p>}
      <PaperPreview key={size} kind={paper.kind} title={title} path={paperPath(paper.id)} size={size} />
      <DrawnFacts drawn={drawn} />
    </Section>
  )
}

/** Which file it is: its size on paper, who drew it, how long it is and what its bytes hash to. */
function DrawnFacts({ drawn }: Pick<PaperView, 'drawn'>) {
  const { words, formats } = useShop()
  const { onPage, sizes } = words.papers
  if (!drawn) return <p className="quiet">{onPage.notDrawn}</p>
  const kilobytes = formats.number(Math.ceil(drawn.bytes / 1024))
  return (
    <Facts
      facts={[
        [onPage.drawn, onPage.drawnSaid(sizes[drawn.size], drawn.drawnBy, kilobytes)],
        [onPage.hash, <code key="hash">{drawn.hash}</code>],
      ]}
    />
  )
}
