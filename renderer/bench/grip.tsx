import { type PointerEvent, useState } from 'react'
import { useShop } from '../shop.tsx'

/** What is being dragged, and over which line. */
interface Drag {
  readonly id: number
  readonly over: number
}

/** The repair on whose line the pointer is; undefined off the lines that can be moved. */
function lineUnder({ clientX, clientY }: PointerEvent): number | undefined {
  const line = document.elementFromPoint(clientX, clientY)?.closest('tr')
  const id = line?.querySelector<HTMLElement>('[data-grip]')?.dataset.grip
  return id === undefined ? undefined : Number(id)
}

/** Dragging a line of the queue to the place of another, with mouse, pen or finger. */
export function useDrag(drop: (id: number, onto: number) => void) {
  const [drag, setDrag] = useState<Drag | null>(null)
  return (id: number) => ({
    id,
    over: drag !== null && drag.over === id && drag.id !== id,
    onPointerDown(event: PointerEvent) {
      event.currentTarget.setPointerCapture(event.pointerId)
      setDrag({ id, over: id })
    },
    onPointerMove(event: PointerEvent) {
      if (drag) setDrag({ ...drag, over: lineUnder(event) ?? drag.over })
    },
    onPointerUp() {
      setDrag(null)
      if (drag && drag.over !== drag.id) drop(drag.id, drag.over)
    },
    onPointerCancel: () => setDrag(null),
  })
}

type GripProps = ReturnType<ReturnType<typeof useDrag>>

/** What a line is taken by. The keys' way are the buttons at the foot and Alt with an arrow, so it is no tab stop. */
export function Grip({ id, over, ...handlers }: GripProps) {
  const { line } = useShop().words.bench
  return (
    <span className="grip" data-grip={id} data-over={over || undefined} title={line.drag} {...handlers} />
  )
}
