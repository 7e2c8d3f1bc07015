import { type ReactNode, useRef, useState } from 'react'
import type { AnyKind } from '../../core/papers/kinds.ts'
import { type PaperSize, sizesOf } from '../../core/papers/sizes.ts'
import { bridge } from '../bridge.ts'
import { useShop } from '../shop.tsx'
import { FewChoice } from './field.tsx'
import { usePrint, useSave } from './paper-link.tsx'

interface PaperPreviewProps {
  readonly kind: AnyKind
  readonly title: string
  /** Where it is served, without a size; it may ask for something else already. */
  readonly path: string
  /** The size it is shown on first. */
  readonly size: PaperSize
  /** What more may be done with it on the size chosen. */
  readonly acts?: (size: PaperSize) => ReactNode
}

const onSize = (path: string, size: PaperSize): string =>
  `${path}${path.includes('?') ? '&' : '?'}size=${size}`

/** A paper shown in the page, on a size of those it comes on, to be opened by itself, printed and saved. */
export function PaperPreview({ kind, title, path, size, acts }: PaperPreviewProps) {
  const { onPage } = useShop().words.papers
  const frame = useRef<HTMLIFrameElement>(null)
  const [chosen, choose] = useState(size)
  const sized = onSize(path, chosen)
  const shown = navigator.pdfViewerEnabled
  return (
    <div className="preview">
      <SizeChoice kind={kind} size={chosen} choose={choose} />
      <PaperButtons path={sized} title={title} printShown={() => frame.current?.contentWindow?.print()}>
        {acts?.(chosen)}
      </PaperButtons>
      {shown ? (
        <iframe
          ref={frame}
          key={sized}
          data-size={chosen}
          src={`${sized}#toolbar=0&navpanes=0&view=FitH`}
          title={title}
        />
      ) : (
        <p className="quiet">{onPage.notShown}</p>
      )}
    </div>
  )
}

interface SizeChoiceProps {
  readonly kind: AnyKind
  readonly size: PaperSize
  readonly choose: (size: PaperSize) => void
}

function SizeChoice({ kind, size, choose }: SizeChoiceProps) {
  const { onPage, sizes } = useShop().words.papers
  const choices = Object.fromEntries(sizesOf[kind].map(each => [each, sizes[each]])) as Record<
    PaperSize,
    string
  >
  return <FewChoice name="size" label={onPage.size} choices={choices} value={size} onChange={choose} />
}

interface PaperButtonsProps {
  readonly path: string
  readonly title: string
  /** Prints what the browser shows in the page. */
  readonly printShown: () => void
  readonly children: ReactNode
}

function PaperButtons({ path, title, printShown, children }: PaperButtonsProps) {
  const { words } = useShop()
  const { paper } = words.screens
  const print = usePrint()
  const save = useSave()
  return (
    <div className="buttons">
      <a className="button second" href={path} target="_blank" rel="noopener" aria-label={paper.view(title)}>
        {words.papers.onPage.open}
      </a>
      {(bridge || navigator.pdfViewerEnabled) && (
        <button
          type="button"
          className="second"
          aria-label={paper.print(title)}
          onClick={() => (bridge ? void print(path) : printShown())}
        >
          {paper.printShort}
        </button>
      )}
      {bridge ? (
        <button
          type="button"
          className="second"
          aria-label={paper.save(title)}
          onClick={() => void save(path)}
        >
          {paper.saveShort}
        </button>
      ) : (
        <a className="button second" href={path} download aria-label={paper.save(title)}>
          {paper.saveShort}
        </a>
      )}
      {children}
    </div>
  )
}
