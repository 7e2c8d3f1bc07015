import { type KeyboardEvent, type ReactNode, useId } from 'react'
import { useWords } from '../words.ts'

/** A list with what is chosen in it beside; below it where there is no room. */
export function Two({ children }: { children: ReactNode }) {
  return <div className="two">{children}</div>
}

/** What is chosen in the list beside it. With `onClose` Escape and a button close it. */
export function Pane(props: { title: string; onClose?: () => void; children: ReactNode }) {
  const { screens } = useWords()
  const heading = useId()
  const { onClose } = props
  const close = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && !event.defaultPrevented) onClose?.()
  }
  return (
    <section className="pane" aria-labelledby={heading} onKeyDown={onClose && close}>
      <header>
        <h2 id={heading}>{props.title}</h2>
        {onClose && (
          <button type="button" className="plain" onClick={onClose}>
            {screens.form.close}
          </button>
        )}
      </header>
      <div className="matter">{props.children}</div>
    </section>
  )
}

/** Quiet acts behind one word, out of the way until asked for. */
export function More({ label, children }: { label?: string; children: ReactNode }) {
  const { screens } = useWords()
  return (
    <details className="more">
      <summary>{label ?? screens.form.more}</summary>
      {children}
    </details>
  )
}
