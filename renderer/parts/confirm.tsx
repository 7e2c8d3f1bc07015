import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef } from 'react'
import { useWords } from '../words.ts'

/** What is asked before an entry of money or law is written. */
export interface Question {
  readonly title: string
  readonly body: ReactNode
  /** What the button that goes on says: the act itself, never a bare “OK”. */
  readonly yesWords: string
}

/** A modal dialog of the browser's own: keeps the focus inside, Escape closes it, the focus goes back to where it was. */
export function Dialog(props: {
  title: string
  onClose: () => void
  onKeyDown?: (event: KeyboardEvent) => void
  children: ReactNode
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  const heading = useId()
  useEffect(() => {
    const shown = dialog.current
    shown?.showModal()
    return () => shown?.close()
  }, [])
  return (
    <dialog ref={dialog} aria-labelledby={heading} onCancel={props.onClose} onKeyDown={props.onKeyDown}>
      <h2 id={heading}>{props.title}</h2>
      {props.children}
    </dialog>
  )
}

/** Asks before going on; “Go back” has the focus, so that a stray Enter writes nothing. */
export function Confirm(props: Question & { onYes: () => void; onNo: () => void }) {
  const { screens } = useWords()
  return (
    <Dialog title={props.title} onClose={props.onNo}>
      {props.body}
      <div className="buttons">
        {/* biome-ignore lint/a11y/noAutofocus: a dialog must put the focus on something, and this is the harmless one */}
        <button type="button" className="second" autoFocus onClick={props.onNo}>
          {screens.form.no}
        </button>
        <button type="button" onClick={props.onYes}>
          {props.yesWords}
        </button>
      </div>
    </Dialog>
  )
}
