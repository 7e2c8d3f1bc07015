import { type ReactNode, useEffect, useState } from 'react'
import { answer, api } from '../api.ts'
import { type Act, ActForm, Send, useAct } from '../parts/act.tsx'
import { useShop } from '../shop.tsx'

type Sent = Parameters<typeof api.shop.changeSettings.$post>[0]['json']

/** Groups of settings as they are typed, each replaced whole. */
type Change = Omit<Sent, 'seen'>

/** Which state of the settings the person has seen: that of the opening of the form, of their own last change, or what they were told of. */
function useSeenStamps() {
  const { stamps } = useShop()
  const [seen, setSeen] = useState<Partial<typeof stamps>>(stamps)
  const add = (more: Partial<typeof stamps>) => setSeen(before => ({ ...before, ...more }))
  return { seen, add, stamps }
}

/** Keeps groups of settings. `said` is what was saved. */
export function useChange(said: string): Act<Change> {
  const { seen, add, stamps } = useSeenStamps()
  const act = useAct(
    (change: Change) => answer(api.shop.changeSettings.$post({ json: { ...change, seen } })),
    { said: () => said, after: ({ stamps }) => add(stamps) },
  )
  const told = act.problems.some(({ code }) => code === 'record.changedSince')
  useEffect(() => {
    if (told) add(stamps)
  })
  return act
}

interface SettingsFormProps {
  /** What these settings are for, in plain words. */
  readonly intro?: string
  readonly label: string
  readonly act: Act<Change>
  readonly input: () => Change
  /** What the button says where a page has several. */
  readonly save?: string
  readonly children: ReactNode
}

/** One group of settings: what it is for, its fields, and its own Save. */
export function SettingsForm({ intro, label, act, input, save, children }: SettingsFormProps) {
  const { shop } = useShop().words
  return (
    <>
      {intro && <p className="shop-intro">{intro}</p>}
      <ActForm act={act} input={input} label={label}>
        {children}
        <div className="buttons">
          <Send act={act}>{save ?? shop.save}</Send>
        </div>
      </ActForm>
    </>
  )
}
