import type { ReactNode } from 'react'
import { answer, api } from '../api.ts'
import { type Act, ActForm, Send, useAct } from '../parts/act.tsx'
import { useShop } from '../shop.tsx'

/** Groups of settings as they are sent, each replaced whole. */
type Change = Parameters<typeof api.shop.changeSettings.$post>[0]['json']

/** Keeps groups of settings. `said` is what was saved. */
export function useChange(said: string): Act<Change> {
  return useAct((json: Change) => answer(api.shop.changeSettings.$post({ json })), {
    said: () => said,
  })
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
