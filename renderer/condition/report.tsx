import { type ReactNode, useState } from 'react'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { isInShop } from '../../core/standing/stages.ts'
import type { Form } from '../../core/vocabulary/clock.ts'
import type { View } from '../../core/vocabulary/intake.ts'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import './condition.css'
import { PhotographsOf } from './photograph/photographs-of.tsx'
import { PinnedDrawing } from './pinned-drawing.tsx'
import { firstPinned, noteSaid, type Pin, type PinnedNote, pinsOn } from './pins.ts'
import { ViewSwitch } from './view-switch.tsx'

type Note = Repair['condition'][number]
type EarlierNote = NonNullable<Repair['lastCondition']>['condition'][number]
type Photograph = Repair['photographs'][number]

/** Notes as they stand on the drawing; those struck out have no pins any more. */
function usePinned(notes: readonly (Note | EarlierNote)[]): PinnedNote[] {
  const { words } = useShop()
  return notes.map((note, index) => ({
    number: index + 1,
    said: noteSaid(words, note),
    pins: note.struckReason === null ? note.pins : [],
  }))
}

interface ReportProps {
  readonly repair: Repair
  /** What may be done about a note, such as striking it out. */
  readonly acts: (note: Note) => ReactNode
}

/** The condition report of a repair, on its drawing and in words; on asking beside that of the clock's last visit. */
export function ConditionReport({ repair, acts }: ReportProps) {
  const { condition: notes, lastCondition: last, clock } = repair
  const now = usePinned(notes)
  const before = usePinned(last?.condition ?? [])
  const [compared, setCompared] = useState(false)
  const [view, setView] = useState<View>(() => firstPinned(now))
  const shown = compared ? [...now, ...before] : now
  const drawn = shown.some(({ pins }) => pins.length > 0)
  return (
    <>
      {last && <CompareButton last={last} compared={compared} onCompare={setCompared} />}
      {drawn && <ViewSwitch view={view} onView={setView} notes={shown} />}
      <div className={compared ? 'reports' : undefined}>
        <Side
          title={compared ? 'now' : null}
          form={clock.form}
          view={drawn ? view : null}
          pinned={now}
          notes={notes}
          photographs={repair.photographs}
          canStrike={isInShop(repair.standing.stage)}
          below={acts}
        />
        {compared && last && (
          <Side
            title={last.number}
            form={clock.form}
            view={drawn ? view : null}
            pinned={before}
            notes={last.condition}
            photographs={last.photographs}
          />
        )}
      </div>
    </>
  )
}

interface CompareButtonProps {
  readonly last: NonNullable<Repair['lastCondition']>
  readonly compared: boolean
  readonly onCompare: (yes: boolean) => void
}

function CompareButton({ last, compared, onCompare }: CompareButtonProps) {
  const { words, formats, settings } = useShop()
  const date = formats.date(civilDateOf(last.takenInAt, settings.place.timeZone))
  return (
    <div>
      <button type="button" className="second" aria-pressed={compared} onClick={() => onCompare(!compared)}>
        {words.condition.compare(last.number, date)}
      </button>
    </div>
  )
}

interface SideProps<N extends Note | EarlierNote> {
  /** Set where two visits stand side by side: this one, or the number of the earlier. */
  readonly title: 'now' | number | null
  readonly form: Form
  /** null where no pin is on any drawing. */
  readonly view: View | null
  readonly pinned: readonly PinnedNote[]
  readonly notes: readonly N[]
  readonly photographs: readonly Photograph[]
  readonly canStrike?: boolean
  readonly below?: (note: N) => ReactNode
}

/** One visit: its drawing, and the same in words. */
function Side<N extends Note | EarlierNote>(props: SideProps<N>) {
  const { title, form, view, pinned, notes, photographs, canStrike = false, below } = props
  const { words } = useShop()
  const { condition } = words
  const pins = view ? pinsOn(pinned, view) : []
  return (
    <div className={view ? 'report' : undefined}>
      {title !== null && <h3>{title === 'now' ? condition.now : condition.before(title)}</h3>}
      {view && (
        <div
          className="board still"
          role="img"
          aria-label={condition.drawing(words.forms[form], condition.views[view], pins.length)}
        >
          <PinnedDrawing form={form} view={view} pins={pins} />
        </div>
      )}
      {notes.length === 0 && <p className="quiet">{condition.nothing}</p>}
      <ol className="pinned-notes" aria-label={condition.notes}>
        {notes.map((note, index) => (
          <li key={note.id}>
            <NoteWords note={note} number={index + 1} compared={title === 'now'} />
            <PhotographsOf
              what={pinned[index]?.said ?? ''}
              photographs={photographs.filter(one => one.noteId === note.id)}
              canStrike={canStrike}
            />
            {below?.(note)}
          </li>
        ))}
      </ol>
      {typeof title === 'number' && (
        <PhotographsOf
          what={condition.wholeClock}
          photographs={photographs.filter(one => one.noteId === null)}
        />
      )}
    </div>
  )
}

/** What a note says, where it is pinned, and in a comparison how it stands to the last visit. */
function NoteWords(props: { note: Note | EarlierNote; number: number; compared: boolean }) {
  const { note, number, compared } = props
  const { words } = useShop()
  const { condition, screens } = words
  const since = compared && 'since' in note ? note.since : null
  return (
    <p>
      <span className="pin-number">{number}</span>{' '}
      <span className={note.struckReason === null ? undefined : 'struck'}>{noteSaid(words, note)}</span>{' '}
      {since && <b className={`since ${since}`}>{condition.since[since]}</b>}
      {note.struckReason !== null && screens.struck(note.struckReason)}
      {note.pins.length > 0 && <small className="quiet">{condition.pinsOn(viewsOf(note.pins, words))}</small>}
    </p>
  )
}

/** `Front, Dial`: the drawings a note is pinned on. */
const viewsOf = (pins: readonly Pin[], { condition }: ReturnType<typeof useShop>['words']): string =>
  [...new Set(pins.map(({ view }) => condition.views[view]))].join(', ')
