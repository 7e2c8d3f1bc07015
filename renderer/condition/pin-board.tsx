import { type KeyboardEvent, type MouseEvent, useId, useState } from 'react'
import type { Form } from '../../core/vocabulary/clock.ts'
import type { View } from '../../core/vocabulary/intake.ts'
import { useShop } from '../shop.tsx'
import { PinnedDrawing } from './pinned-drawing.tsx'
import { hundredths, type NumberedPin, type Pin, pinNear } from './pins.ts'

type Place = Pick<Pin, 'x' | 'y'>

interface PinBoardProps {
  readonly form: Form
  readonly view: View
  readonly pins: readonly NumberedPin[]
  readonly current: number
  readonly onPlace: (place: Place) => void
  readonly onRemove: (pin: NumberedPin) => void
  /** A pin that is there was clicked. */
  readonly onPick: (pin: NumberedPin) => void
}

const step = 0.02
const stride = 0.1

/** Pins stay this far inside the edge, so that all of a pin is on the drawing. */
const edge = 0.04

const inside = (share: number): number => Math.round(Math.min(1 - edge, Math.max(edge, share)) * 1000) / 1000

const moves: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** Where on the drawing it was clicked. */
function clicked({ clientX, clientY, currentTarget }: MouseEvent<HTMLElement>): Place {
  const { left, top, width, height } = currentTarget.getBoundingClientRect()
  return { x: inside((clientX - left) / width), y: inside((clientY - top) / height) }
}

/** What a key does to the cross, or nothing. */
function moved({ key, shiftKey }: KeyboardEvent, { x, y }: Place): Place | undefined {
  const by = shiftKey ? stride : step
  const move = moves[key]
  return move && { x: inside(x + move[0] * by), y: inside(y + move[1] * by) }
}

/** A drawing to set pins on, by click or touch, and by keyboard with a cross that says where it stands. */
export function PinBoard({ form, view, pins, current, onPlace, onRemove, onPick }: PinBoardProps) {
  const { words } = useShop()
  const { condition } = words
  const help = useId()
  const [cross, setCross] = useState<Place>({ x: 0.5, y: 0.5 })
  const [said, setSaid] = useState('')
  const placeWords = ({ x, y }: Place) => condition.place(hundredths(x), hundredths(y))
  /** Two pins never cover each other: where one stands, it is the one that is meant. */
  const setPin = (at: Place) => {
    const near = pinNear(pins, at)
    if (near) onPick(near)
    else onPlace(at)
    setSaid(
      near
        ? condition.near(placeWords(at), near.number, near.said)
        : condition.pinSet(current, placeWords(at)),
    )
  }
  const remove = () => {
    const near = pinNear(pins, cross)
    if (near) onRemove(near)
    setSaid(near ? condition.pinTaken(near.number) : condition.noPinNear)
  }
  const move = (to: Place) => {
    setCross(to)
    const near = pinNear(pins, to)
    setSaid(near ? condition.near(placeWords(to), near.number, near.said) : placeWords(to))
  }
  const pressed = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const to = moved(event, cross)
    if (to) move(to)
    else if (event.key === 'Enter' || event.key === ' ') setPin(cross)
    else if (event.key === 'Delete' || event.key === 'Backspace') remove()
    else return
    event.preventDefault()
  }
  const click = (event: MouseEvent<HTMLElement>) => {
    const at = clicked(event)
    setCross(at)
    setPin(at)
  }
  return (
    <div>
      <div
        className="board"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the board takes arrow keys, Enter and Delete
        tabIndex={0}
        aria-label={condition.board(words.forms[form], condition.views[view])}
        aria-describedby={help}
        onKeyDown={pressed}
        onClick={click}
      >
        <PinnedDrawing form={form} view={view} pins={pins} current={current} cross={cross} />
      </div>
      <p id={help} className="hint">
        {condition.boardKeys}
      </p>
      <span className="hidden-words" role="status">
        {said}
      </span>
    </div>
  )
}
