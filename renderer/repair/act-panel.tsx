import type { ReactNode } from 'react'
import { type Act, ActForm, Send } from '../parts/act.tsx'
import { Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'

interface ActPanelProps<Input> {
  readonly title: string
  readonly act: Act<Input>
  readonly input: () => Input
  readonly send: string
  readonly close: () => void
  readonly children: ReactNode
}

/** The form of one act on a repair: fields, the act's own words on its button, and a way back. */
export function ActPanel<Input>({ title, act, input, send, close, children }: ActPanelProps<Input>) {
  const { screens } = useShop().words
  return (
    <div className="act-panel">
      <Section title={title}>
        <ActForm act={act} input={input} label={title} className="form wide-form" focusFirst>
          {children}
          <div className="buttons">
            <Send act={act}>{send}</Send>
            <button type="button" className="second" onClick={close}>
              {screens.form.no}
            </button>
          </div>
        </ActForm>
      </Section>
    </div>
  )
}
