import './book.css'
import { type KeyboardEvent, useEffect, useRef, useState } from 'react'
import { useSay } from '../../parts/announcer.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice } from '../../parts/field.tsx'
import { partWords } from '../../parts/part-words.ts'
import { useShop } from '../../shop.tsx'
import type { Repair } from '../repair.ts'
import { blankLine, type TypedLine } from '../typed-line.ts'
import { askedOf, describedAs, firstAsk } from './ask.ts'
import { AskFields } from './ask-fields.tsx'
import { Quote } from './quote.tsx'
import { useBook, useParts } from './use-book.ts'

interface FromBookProps {
  readonly view: Repair
  /** Takes the line in and says which it has become, and the name of its first field. */
  readonly onTake: (line: TypedLine) => { readonly number: number; readonly name: string }
}

/** Puts the cursor into the control of this name once it is there: what a key or a click changed is drawn by then, and the next key is not lost. */
export const focusLater = (name: string) =>
  queueMicrotask(() => document.querySelector<HTMLElement>(`[name="${name}"]`)?.focus())

/** A line from the price book instead of one by hand; the button opens what can be asked. */
export function FromBook({ view, onTake }: FromBookProps) {
  const { priceBook } = useShop().words
  const say = useSay()
  const opener = useRef<HTMLButtonElement>(null)
  const [open, setOpen] = useState(false)
  const take = (line: TypedLine) => {
    const { number, name } = onTake(line)
    setOpen(false)
    say(priceBook.taken(number))
    focusLater(name)
  }
  const close = () => {
    setOpen(false)
    requestAnimationFrame(() => opener.current?.focus())
  }
  if (open) return <Ask view={view} onTake={take} onClose={close} />
  return (
    <button type="button" className="plain from-book" ref={opener} onClick={() => setOpen(true)}>
      {priceBook.open}
    </button>
  )
}

interface AskProps {
  readonly view: Repair
  readonly onTake: (line: TypedLine) => void
  readonly onClose: () => void
}

/** What is asked, what it comes to and why; Enter takes the line, Escape goes back. */
function Ask({ view, onTake, onClose }: AskProps) {
  const { words, settings } = useShop()
  const { priceBook, screens } = words
  const book = useBook(view)
  const parts = useParts()
  const entry = useEntry(firstAsk(settings.prices, view), 'book')
  const asked = askedOf(entry.value)
  const part = parts?.find(one => String(one.id) === entry.value.partId)
  const told = asked && book.line(asked, part?.id ?? null)
  const fields = useRef<HTMLFieldSetElement>(null)
  useEffect(() => fields.current?.querySelector('select')?.focus(), [])
  const take = () => {
    if (!asked || !told?.ok) return
    const { working: _, ...line } = told.value
    const description = describedAs(asked, part ? partWords(words, part) : '', words)
    onTake({ ...blankLine, ...line, description, priced: asked, partId: part?.id ?? null })
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onClose()
    else if (event.key === 'Enter' && !(event.target instanceof HTMLButtonElement)) take()
    else return
    // Neither is meant for the form around it.
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <fieldset className="book-ask" ref={fields} onKeyDown={onKeyDown}>
      <legend>{priceBook.title}</legend>
      <div className="fields">
        <Choice label={priceBook.what} choices={priceBook.from} {...entry.at('from')} />
        <AskFields view={view} entry={entry} parts={parts ?? []} />
      </div>
      <Quote view={view} told={told} />
      <div className="buttons">
        <button type="button" className="second" onClick={take}>
          {priceBook.take}
        </button>
        <button type="button" className="plain" onClick={onClose}>
          {screens.form.no}
        </button>
      </div>
    </fieldset>
  )
}
