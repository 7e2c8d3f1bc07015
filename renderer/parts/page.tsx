import { type ReactNode, useEffect, useRef } from 'react'
import { useShop } from '../shop.tsx'

/** One figure of the page's head with its words, as in `3 to collect`. */
export interface Sum {
  readonly figure: ReactNode
  readonly words: string
}

export interface PageProps {
  readonly title: string
  /** Stands in the margin left of the title: usually the date. */
  readonly date?: ReactNode
  /** A line below the title. */
  readonly subtitle?: ReactNode
  readonly sums?: readonly Sum[]
  /** The line at the foot of the page: an `EntryLine`. */
  readonly entry?: ReactNode
  readonly children: ReactNode
}

const isTyping = (element: Element | null) => element?.matches('input, select, textarea') ?? false

/** The heading takes the focus on a turn of the page, unless the new page or a control being typed in has it. */
function useTurnedTo(title: string) {
  const heading = useRef<HTMLHeadingElement>(null)
  const { settings, words } = useShop()
  useEffect(() => {
    document.title = words.screens.titleOf(title, settings.shop.name)
    const main = heading.current?.closest('main')
    const has = document.activeElement
    if (main && !main.contains(has) && !isTyping(has)) heading.current?.focus({ preventScroll: true })
  }, [title, settings.shop.name, words])
  return heading
}

/** The frame of every page: head, matter, entry line. */
export function Page({ title, date, subtitle, sums = [], entry, children }: PageProps) {
  const heading = useTurnedTo(title)
  return (
    <>
      <header className="head">
        <div className="date">{date}</div>
        <div className="title">
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {subtitle && <p>{subtitle}</p>}
        </div>
        <div className="sums">
          {sums.map(({ figure, words }) => (
            <span key={words}>
              <b>{figure}</b> {words}
            </span>
          ))}
        </div>
      </header>
      <div className="sheet">{children}</div>
      {entry}
    </>
  )
}

/** The strip at the foot of a page; put one form or one `<div className="line">` with label, control and buttons in it. */
export function EntryLine({ label, children }: { label: string; children: ReactNode }) {
  return (
    <section className="entry-line" aria-label={label}>
      {children}
    </section>
  )
}

/** Matter with its title in the margin, right of the double rule. `flush` lets a ledger use the whole width. */
export function Section(props: { title: string; note?: ReactNode; flush?: boolean; children: ReactNode }) {
  return (
    <section className="section" aria-label={props.title}>
      <header>
        <h2>{props.title}</h2>
        {props.note && <p>{props.note}</p>}
      </header>
      <div className={props.flush ? 'matter flush' : 'matter'}>{props.children}</div>
    </section>
  )
}

/** Facts one below the other; those without a value are left out. */
export function Facts({ facts }: { facts: readonly (readonly [string, ReactNode])[] }) {
  return (
    <dl className="facts">
      {facts
        .filter(([, value]) => value !== null && value !== undefined && value !== '' && value !== false)
        .map(([name, value]) => (
          <div key={name} className="fact">
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
    </dl>
  )
}
