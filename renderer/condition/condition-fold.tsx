import { useState } from 'react'
import type { Form } from '../../core/vocabulary/clock.ts'
import { useShop } from '../shop.tsx'
import { ConditionDrawing } from './condition-drawing.tsx'
import { PhotographsKept } from './photograph/photographs-kept.tsx'
import './condition.css'
import { componentOn, type NoteOnDrawing, noteSaid, type Pin } from './pins.ts'

/** A note being written, and its number on the drawing. */
interface WrittenNote {
  readonly number: number
  readonly note: NoteOnDrawing
}

interface ConditionFoldProps {
  readonly form: Form
  readonly notes: readonly WrittenNote[]
  /** The number of the note that setting a pin would begin; null where none can be begun. */
  readonly newNumber: number | null
  /** Changes some of a note, or begins it. */
  readonly onChange: (number: number, change: Partial<NoteOnDrawing>) => void
  /** Photographs of the whole clock, where they may be added. */
  readonly whole?: { readonly hashes: readonly string[]; readonly onChange: (hashes: string[]) => void }
}

/** Pins and photographs of the notes being written, folded away until asked for: one stop on the way with the keyboard. */
export function ConditionFold(props: ConditionFoldProps) {
  const { condition } = useShop().words
  const [open, setOpen] = useState(false)
  const { notes, whole } = props
  const pins = notes.reduce((sum, { note }) => sum + note.pins.length, 0)
  const photographs = notes.reduce(
    (sum, { note }) => sum + note.photographs.length,
    whole?.hashes.length ?? 0,
  )
  return (
    <details className="condition-fold" onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>{pins + photographs > 0 ? condition.foldWith(pins, photographs) : condition.fold}</summary>
      {open && <Opened {...props} />}
    </details>
  )
}

/** A note begun by its pin is on what the drawing shows, and not sound: something is there to be pointed at. */
const begunBy = ({ view }: Pin): Partial<NoteOnDrawing> => ({ component: componentOn[view], grade: 'marked' })

function Opened({ form, notes, newNumber, onChange, whole }: ConditionFoldProps) {
  const { words } = useShop()
  const { wholeClock } = words.condition
  const noteAt = (number: number) => notes.find(one => one.number === number)?.note
  const place = (number: number, pin: Pin) => {
    const note = noteAt(number)
    onChange(number, note ? { pins: [...note.pins, pin] } : { ...begunBy(pin), pins: [pin] })
  }
  const remove = (number: number, index: number) =>
    onChange(number, { pins: noteAt(number)?.pins.filter((_, i) => i !== index) ?? [] })
  return (
    <ConditionDrawing
      form={form}
      notes={notes.map(({ number, note }) => ({ number, said: noteSaid(words, note), pins: note.pins }))}
      newNumber={newNumber}
      onPlace={place}
      onRemove={remove}
      more={({ number, said }) => (
        <PhotographsKept
          what={said}
          hashes={noteAt(number)?.photographs ?? []}
          onChange={photographs => onChange(number, { photographs })}
        />
      )}
    >
      {whole && (
        <div>
          <h3>{wholeClock}</h3>
          <PhotographsKept what={wholeClock} {...whole} />
        </div>
      )}
    </ConditionDrawing>
  )
}
