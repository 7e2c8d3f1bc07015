import { type ReactNode, useState } from 'react'
import type { Reserved as ReservedAct } from '../../core/people/may.ts'
import { type Act, ActForm, Send } from './act.tsx'
import './opened.css'
import { useShop } from '../shop.tsx'
import { Reserved, useMayNot } from './reserved.tsx'

interface OpenedProps {
  /** What the button says that opens the form. */
  readonly label: string
  readonly look?: 'second' | 'plain'
  /** A longer name for screen readers, where several buttons say the same. */
  readonly name?: string
  readonly children: (close: () => void) => ReactNode
}

/** A button that opens a form in its place. */
export function Opened({ label, look = 'second', name, children }: OpenedProps) {
  const [open, setOpen] = useState(false)
  if (open) return children(() => setOpen(false))
  return (
    <button type="button" className={`${look} opener`} aria-label={name} onClick={() => setOpen(true)}>
      {label}
    </button>
  )
}

interface OpenFormProps<Input> {
  readonly act: Act<Input>
  readonly input: () => Input
  readonly label: string
  readonly send: string
  readonly close: () => void
  readonly className?: string
  /** What the act is called where it is not everybody’s. */
  readonly reserved?: ReservedAct
  readonly children: ReactNode
}

/** The form that was opened: its fields, its act, and the way back. */
export function OpenForm<Input>({ send, close, children, reserved, ...form }: OpenFormProps<Input>) {
  const closed = useMayNot(reserved) !== null
  const back = <Back close={close} />
  return (
    <>
      <Reserved act={reserved}>
        <ActForm {...form} focusFirst>
          {children}
          <div className="buttons">
            <Send act={form.act}>{send}</Send>
            {!closed && back}
          </div>
        </ActForm>
      </Reserved>
      {closed && back}
    </>
  )
}

function Back({ close }: { close: () => void }) {
  const { screens } = useShop().words
  return (
    <button type="button" className="second" onClick={close}>
      {screens.form.no}
    </button>
  )
}
