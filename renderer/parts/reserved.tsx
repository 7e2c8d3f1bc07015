import type { ReactNode } from 'react'
import { mayNot, type Reserved as ReservedAct } from '../../core/people/may.ts'
import { problemText } from '../../core/words/problem-text.ts'
import { useShop } from '../shop.tsx'

/** Why whoever acts here may not do it; null where they may, and while nobody has said a name: that is asked when something is sent. */
export function useMayNot(act: ReservedAct | undefined): string | null {
  const { people, person, words } = useShop()
  const who = people.find(({ id }) => String(id) === person)
  const problem = act && who ? mayNot({ act, who, several: people.length > 1 }) : null
  return problem && problemText(words, problem)
}

/** Why whoever acts here may not do it, where they may not. */
export function WhyNot({ act }: { act: ReservedAct | undefined }) {
  const reason = useMayNot(act)
  return reason && <p className="note">{reason}</p>
}

/** Forms of an act that may not be everybody's: where it is not given to whoever acts here, they can be read but not filled in, and the reason stands above. */
export function Reserved({ act, children }: { act: ReservedAct | undefined; children: ReactNode }) {
  const closed = useMayNot(act) !== null
  return (
    <>
      <WhyNot act={act} />
      <fieldset className="reserved" disabled={closed}>
        {children}
      </fieldset>
    </>
  )
}
