import type { EarlierRepair, Finish, Grade, View } from '../../core/vocabulary/intake.ts'
import { type Component, views } from '../../core/vocabulary/intake.ts'
import type { Words } from '../../core/words/en/index.ts'

/** A place on one of the outline drawings, 0…1 from its left and from its top. */
export interface Pin {
  readonly view: View
  readonly x: number
  readonly y: number
}

/** A condition note as it stands beside the drawing: its number is on each of its pins. */
export interface PinnedNote {
  readonly number: number
  /** What it says, in one line. */
  readonly said: string
  readonly pins: readonly Pin[]
}

/** A pin and the note it belongs to; `index` is its place in the note's own list. */
export interface NumberedPin extends Pin {
  readonly number: number
  readonly index: number
  readonly said: string
}

/** The pins of all notes on one view. */
export const pinsOn = (notes: readonly PinnedNote[], view: View): NumberedPin[] =>
  notes.flatMap(({ number, said, pins }) =>
    pins.flatMap((pin, index) => (pin.view === view ? [{ ...pin, number, index, said }] : [])),
  )

/** How near a pin must be to be meant, in widths of the drawing. */
const reach = 0.07

/** The drawing is a third taller than broad: distances are compared in widths. */
const heightInWidths = 4 / 3

/** The pin nearest to a place, if one is near enough to be meant. */
export function pinNear(
  pins: readonly NumberedPin[],
  { x, y }: Pick<Pin, 'x' | 'y'>,
): NumberedPin | undefined {
  const away = (pin: Pin) => Math.hypot(pin.x - x, (pin.y - y) * heightInWidths)
  const [nearest] = pins.filter(pin => away(pin) <= reach).sort((a, b) => away(a) - away(b))
  return nearest
}

/** A share of the drawing in hundredths, as places are told. */
export const hundredths = (share: number): number => Math.round(share * 100)

interface Said {
  readonly component: Component | ''
  readonly finish: Finish | ''
  readonly grade: Grade
  readonly earlierRepair: EarlierRepair | ''
  readonly remark: string
}

/** A condition note being written, with its pins and the hashes of its photographs. */
export interface NoteOnDrawing extends Said {
  readonly pins: readonly Pin[]
  readonly photographs: readonly string[]
}

/** A condition note in one line: component, grade, finish, sign of earlier repair, remark. */
export const noteSaid = (words: Words, note: Said): string =>
  [
    note.component && words.components[note.component],
    words.grades[note.grade].toLowerCase(),
    note.finish && words.finishes[note.finish],
    note.earlierRepair && words.condition.earlierRepair(words.earlierRepairs[note.earlierRepair]),
    note.remark,
  ]
    .filter(Boolean)
    .join(', ')

/** What a pin set without a note is first taken to be on. */
export const componentOn: Record<View, Component> = {
  front: 'case',
  back: 'case',
  dial: 'dial',
  movement: 'movement',
}

/** The first view that has a pin, the front where none has. */
export const firstPinned = (notes: readonly PinnedNote[]): View =>
  views.find(view => pinsOn(notes, view).length > 0) ?? 'front'
