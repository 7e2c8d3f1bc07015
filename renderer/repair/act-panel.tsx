import type { ReactNode } from 'react'
import type { Reserved as ReservedAct } from '../../core/people/may.ts'
import type { Act } from '../parts/act.tsx'
import { OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'

interface ActPanelProps<Input> {
  readonly title: string
  readonly act: Act<Input>
  readonly input: () => Input
  readonly send: string
  readonly close: () => void
  /** What the act is called where it is not everybody’s. */
  readonly reserved?: ReservedAct
  readonly children: ReactNode
}

/** The form of one act on a repair: fields, the act's own words on its button, and a way back. */
export function ActPanel<Input>({ title, ...form }: ActPanelProps<Input>) {
  return (
    <div className="act-panel">
      <Section title={title}>
        <OpenForm {...form} label={title} className="form wide-form" />
      </Section>
    </div>
  )
}
