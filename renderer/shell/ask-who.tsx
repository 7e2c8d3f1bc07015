import { type ReactNode, useEffect, useState } from 'react'
import { Dialog } from '../parts/confirm.tsx'
import { NamedContext } from '../parts/named.ts'
import { useShop } from '../shop.tsx'

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
      {waiting && !person && <Question onNo={() => setWaiting(null)} />}
    </NamedContext>
  )
}

function Question({ onNo }: { onNo: () => void }) {
  const { people, words, actAs } = useShop()
  const { who, form } = words.screens
  return (
    <Dialog title={who.ask} onClose={onNo}>
      <p>{who.why}</p>
      <ul className="people-asked">
        {people
          .filter(({ active }) => active)
          .map(({ id, name }) => (
            <li key={id}>
              <button type="button" onClick={() => actAs(String(id))}>
                {name}
              </button>
            </li>
          ))}
      </ul>
      <div className="buttons">
        <button type="button" className="plain" onClick={onNo}>
          {form.no}
        </button>
      </div>
    </Dialog>
  )
}
