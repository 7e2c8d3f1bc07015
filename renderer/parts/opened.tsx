import { type ReactNode, useState } from 'react'
import { type Act, ActForm, Send } from './act.tsx'
import './opened.css'
import { useShop } from '../shop.tsx'

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
  readonly children: ReactNode
}

/** The form that was opened: its fields, its act, and the way back. */
export function OpenForm<Input>({ send, close, children, ...form }: OpenFormProps<Input>) {
  const { screens } = useShop().words
  return (
    <ActForm {...form} focusFirst>
      {children}
      <div className="buttons">
        <Send act={form.act}>{send}</Send>
        <button type="button" className="second" onClick={close}>
          {screens.form.no}
        </button>
      </div>
    </ActForm>
  )
}
