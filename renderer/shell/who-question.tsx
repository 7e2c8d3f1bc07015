import type { KeyboardEvent } from 'react'
import { Dialog } from '../parts/confirm.tsx'
import { useShop } from '../shop.tsx'
import { pickedBy } from './picked.ts'

/** The people who work here, to be chosen by mouse, by figure or by initial. */
export function WhoQuestion({ onChosen, onNo }: { onChosen?: () => void; onNo: () => void }) {
  const { people, words, actAs } = useShop()
  const { who, form } = words.screens
  const here = people.filter(({ active }) => active)
  const choose = (id: number, control: EventTarget) => {
    // Closed by itself it gives the focus back to the field that is being written in.
    if (control instanceof Element) control.closest('dialog')?.close()
    actAs(String(id))
    onChosen?.()
  }
  const pressed = (event: KeyboardEvent) => {
    const picked = event.ctrlKey || event.metaKey ? undefined : pickedBy(event.key, here)
    if (!picked) return
    event.preventDefault()
    choose(picked.id, event.target)
  }
  return (
    <Dialog title={who.ask} onClose={onNo} onKeyDown={pressed}>
      <p>{who.why}</p>
      <ol className="people-asked">
        {here.map(({ id, name }, at) => (
          <li key={id}>
            <button
              type="button"
              onClick={event => choose(id, event.target)}
              aria-keyshortcuts={at < 9 ? String(at + 1) : undefined}
            >
              {at < 9 && <kbd>{at + 1}</kbd>} {name}
            </button>
          </li>
        ))}
      </ol>
      <div className="buttons">
        <button type="button" className="plain" onClick={onNo}>
          {form.no}
        </button>
      </div>
    </Dialog>
  )
}
