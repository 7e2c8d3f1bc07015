import { createContext, Fragment, type ReactNode, useContext, useState } from 'react'
import { Link, useLocation } from 'wouter'

/** A paper that came of an act. */
export interface SaidPaper {
  /** Its page. */
  readonly place: string
  readonly title: string
}

/** Shows the words; the papers, where there are any, are links beside them. */
type SayWords = (words: string, papers?: readonly SaidPaper[]) => void

interface WhatWasSaid {
  readonly words: string
  readonly papers: readonly SaidPaper[]
  readonly count: number
}

const nothing: WhatWasSaid = { words: '', papers: [], count: 0 }
const Say = createContext<SayWords>(() => {})
const Said = createContext(nothing)

/** Keeps what was last said, for the strip that shows it. */
export function Announcer({ children }: { children: ReactNode }) {
  const [said, setSaid] = useState(nothing)
  const [say] = useState(
    (): SayWords =>
      (words, papers = []) =>
        setSaid(before => ({ words, papers, count: before.count + 1 })),
  )
  return (
    <Say value={say}>
      <Said value={said}>{children}</Said>
    </Say>
  )
}

/** Says in the shell's status strip, aloud for screen readers, what came of an act; '' clears it. */
export const useSay = () => useContext(Say)

/** The strip itself: a polite live region that is always there (WCAG 4.1.3). What it says goes when the page is turned. */
export function SaidStrip() {
  const { words, papers, count } = useContext(Said)
  const [place] = useLocation()
  const [said, setSaid] = useState({ count, place, gone: false })
  // An act often turns the page itself: what it said is then first seen on that page, and goes with the next.
  if (said.count !== count) setSaid({ count, place, gone: false })
  else if (said.place !== place && !said.gone) setSaid({ ...said, gone: true })
  return (
    <div className="said" role="status">
      {words && !said.gone && (
        <p key={count}>
          {words}
          {papers.map(({ place, title }) => (
            <Fragment key={place}>
              {' '}
              <Link href={place}>{title}</Link>
            </Fragment>
          ))}
        </p>
      )}
    </div>
  )
}
