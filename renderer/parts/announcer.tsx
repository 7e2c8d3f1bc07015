import { createContext, type ReactNode, useContext, useState } from 'react'

const Say = createContext<(words: string) => void>(() => {})
const Said = createContext<{ words: string; count: number }>({ words: '', count: 0 })

/** Keeps what was last said, for the strip that shows it. */
export function Announcer({ children }: { children: ReactNode }) {
  const [said, setSaid] = useState({ words: '', count: 0 })
  const [say] = useState(() => (words: string) => setSaid(before => ({ words, count: before.count + 1 })))
  return (
    <Say value={say}>
      <Said value={said}>{children}</Said>
    </Say>
  )
}

/** Says in the shell's status strip, aloud for screen readers, what came of an act; '' clears it. */
export const useSay = () => useContext(Say)

/** The strip itself: a polite live region that is always there (WCAG 4.1.3). */
export function SaidStrip() {
  const { words, count } = useContext(Said)
  return (
    <div className="said" role="status">
      {words && <p key={count}>{words}</p>}
    </div>
  )
}
