import { type ReactNode, useEffect, useState } from 'react'
import { NamedContext } from '../parts/named.ts'
import { useShop } from '../shop.tsx'
import { WhoQuestion } from './who-question.tsx'

/** Asks once in a window who is at the counter, before its first act, where several people work. */
export function AskWho({ children }: { children: ReactNode }) {
  const { people, person } = useShop()
  const [waiting, setWaiting] = useState<(() => void) | null>(null)
  const several = people.filter(({ active }) => active).length > 1
  // The act is sent only when the name has reached everything that is sent from now on.
  useEffect(() => {
    if (!person || !waiting) return
    setWaiting(null)
    waiting()
  }, [person, waiting])
  const named = (goOn: () => void) => (several && !person ? setWaiting(() => goOn) : goOn())
  return (
    <NamedContext value={named}>
      {children}
      {waiting && !person && <WhoQuestion onNo={() => setWaiting(null)} />}
    </NamedContext>
  )
}
