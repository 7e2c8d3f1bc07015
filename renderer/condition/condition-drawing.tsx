import { type ReactNode, useState } from 'react'
import type { Form } from '../../core/vocabulary/clock.ts'
import type { View } from '../../core/vocabulary/intake.ts'
import { Choice } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { PinBoard } from './pin-board.tsx'
import { hundredths, type Pin, type PinnedNote, pinsOn } from './pins.ts'
import { ViewSwitch } from './view-switch.tsx'

interface ConditionDrawingProps {
  readonly form: Form
  readonly notes: readonly PinnedNote[]
  /** The number a note would have that is begun by setting a pin. */
  readonly newNumber: number | null
  readonly onPlace: (number: number, pin: Pin) => void
  readonly onRemove: (number: number, index: number) => void
  /** What else belongs to a note, such as its photographs. */
  readonly more?: (note: PinnedNote) => ReactNode
  readonly children?: ReactNode
}

/** The note pins are set for: the chosen one, else the last that has none yet, else a new one. */
function currentNote({ notes, newNumber }: ConditionDrawingProps, chosen: number | null): number {
  if (chosen !== null && chosen === newNumber) return chosen
  const one = notes.find(({ number }) => number === chosen) ?? notes.findLast(({ pins }) => pins.length === 0)
  return one?.number ?? newNumber ?? notes.at(-1)?.number ?? 1
}

/** The condition report on its drawing: pins are set on the left, the same stands in words on the right. */
export function ConditionDrawing(props: ConditionDrawingProps) {
  const { form, notes, newNumber, onPlace, onRemove } = props
  const { condition } = useShop().words
  const [view, setView] = useState<View>('front')
  const [chosen, setChosen] = useState<number | null>(null)
  const current = currentNote(props, chosen)
  const place = (at: Pick<Pin, 'x' | 'y'>) => {
    onPlace(current, { view, ...at })
    setChosen(current)
  }
  const choices = Object.fromEntries(
    notes.map(({ number, said }) => [String(number), condition.noteOf(number, said)]),
  )
  return (
    <div className="condition-drawing">
      <div className="drawn">
        <ViewSwitch view={view} onView={setView} notes={notes} />
        <Choice
          name="pinFor"
          label={condition.pinFor}
          choices={newNumber === null ? choices : { ...choices, [newNumber]: condition.newNote }}
          value={String(current)}
          onChange={number => setChosen(Number(number))}
        />
        <PinBoard
          key={view}
          form={form}
          view={view}
          pins={pinsOn(notes, view)}
          current={current}
          onPlace={place}
          onRemove={pin => onRemove(pin.number, pin.index)}
          onPick={pin => setChosen(pin.number)}
        />
      </div>
      <div className="told">
        <PinnedNotes {...props} />
        {props.children}
      </div>
    </div>
  )
}

function PinnedNotes({ notes, onRemove, more }: ConditionDrawingProps) {
  const { condition } = useShop().words
  if (notes.length === 0) return <p className="quiet">{condition.noNotes}</p>
  return (
    <ol className="pinned-notes" aria-label={condition.notes}>
      {notes.map(note => (
        <li key={note.number}>
          <p>
            <span className="pin-number">{note.number}</span> {note.said}
          </p>
          <PinPlaces note={note} onRemove={index => onRemove(note.number, index)} />
          {more?.(note)}
        </li>
      ))}
    </ol>
  )
}

function PinPlaces({ note, onRemove }: { note: PinnedNote; onRemove: (index: number) => void }) {
  const { condition } = useShop().words
  const where = ({ view, x, y }: Pin) => condition.pinAt(condition.views[view], hundredths(x), hundredths(y))
  return (
    <ul className="pin-places">
      {note.pins.map((pin, index) => (
        <li key={`${pin.view} ${pin.x} ${pin.y}`}>
          {where(pin)}
          <button
            type="button"
            className="plain"
            aria-label={condition.takeAwayPin(note.number, where(pin))}
            onClick={() => onRemove(index)}
          >
            {condition.takeAway}
          </button>
        </li>
      ))}
    </ul>
  )
}
