import type { ReactNode } from 'react'
import type { AnyKind } from '../../core/papers/kinds.ts'
import type { PaperSize } from '../../core/papers/sizes.ts'
import { useShop } from '../shop.tsx'
import { Facts, Section } from './page.tsx'
import { PaperPreview } from './paper-preview.tsx'

/** What the ledger tells of a paper's file; null until it has been drawn. */
export type Drawn = {
  readonly size: PaperSize
  readonly drawnBy: string
  readonly bytes: number
  readonly hash: string
  readonly state: 'kept' | 'missing' | 'damaged'
} | null

interface PaperItselfProps {
  readonly kind: AnyKind
  readonly title: string
  /** Where it is served. */
  readonly path: string
  /** The size it is shown on first. */
  readonly size: PaperSize
  /** What is known of the file that was kept; left out of a paper that is none. */
  readonly drawn?: Drawn
  /** What more may be done with it on a size. */
  readonly acts?: (size: PaperSize) => ReactNode
}

/** The paper shown in its page, and what is known of its file where one is kept; named where that is missing or damaged. */
export function PaperItself({ drawn, ...shown }: PaperItselfProps) {
  const { onPage } = useShop().words.papers
  return (
    <Section title={onPage.section}>
      {drawn && drawn.state !== 'kept' && <p className="late">{onPage[drawn.state]}</p>}
      <PaperPreview key={`${shown.path} ${shown.size}`} {...shown} />
      {drawn !== undefined && <DrawnFacts drawn={drawn} />}
    </Section>
  )
}

/** Which file it is: its size on paper, who drew it, how long it is and what its bytes hash to. */
function DrawnFacts({ drawn }: { drawn: Drawn }) {
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
