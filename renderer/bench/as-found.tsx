import { marksOf } from '../../core/bench/steps.ts'
import type { AsFoundMark } from '../../core/vocabulary/work.ts'
import { answer, api } from '../api.ts'
import { PhotographField } from '../condition/photograph/photograph-field.tsx'
import { PhotographsOf } from '../condition/photograph/photographs-of.tsx'
import { Asking, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, TextArea, TextField } from '../parts/field.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { ProblemList } from '../parts/problems.tsx'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import type { Card } from './bench.ts'
import { StrikeOut } from './strike-out.tsx'

type Note = Card['asFound'][number]

/** The photographs taken of the movement before the strip. */
export const photographsAsFound = ({ photographs }: Repair) =>
  photographs.filter(photograph => photograph.moment === 'as-found')

/** The movement as it was found: its marks in words, and photographs. */
export function AsFound({ view }: { view: Repair }) {
  const { words } = useShop()
  const { service } = words.bench
  const { asFound } = view.bench
  const pictures = photographsAsFound(view)
  return (
    <>
      <h3 className="group-label">{service.asFound}</h3>
      {asFound.length + pictures.length === 0 && <p className="quiet">{service.none}</p>}
      <ul className="lines">
        {asFound.map(note => (
          <li key={note.id}>
            <NoteWords note={note} />{' '}
            {!note.struckReason && (
              <StrikeOut
                what={words.asFoundMarks[note.mark]}
                send={reason =>
                  answer(api.bench.strikeAsFound.$post({ json: { asFoundId: note.id, reason } }))
                }
              />
            )}
          </li>
        ))}
      </ul>
      <PhotographsOf what={service.asFound} photographs={pictures} canStrike />
      <div className="openers">
        <Opened label={service.addMark}>{close => <MarkForm view={view} close={close} />}</Opened>
        <Opened label={service.addPhotographs}>{close => <AddPictures view={view} close={close} />}</Opened>
      </div>
    </>
  )
}

/** A mark in words, struck out with its reason where it is. */
export function NoteWords({ note }: { note: Note }) {
  const { words } = useShop()
  const said = (
    <>
      <b>{words.asFoundMarks[note.mark]}</b>: {note.text}
    </>
  )
  if (!note.struckReason) return said
  return (
    <>
      <s>{said}</s> <small>{words.screens.struck(note.struckReason)}</small>
    </>
  )
}

/** Photographs of the movement, each with what it shows. */
function AddPictures({ view, close }: { view: Repair; close: () => void }) {
  const { words } = useShop()
  const { service } = words.bench
  const entry = useEntry({ remark: '' })
  const act = useAct(
    (input: Parameters<typeof api.photographs.attach.$post>[0]['json']) =>
      answer(api.photographs.attach.$post({ json: input })),
    { said: () => words.condition.attached },
  )
  const kept = (hash: string) =>
    act.run({ hash, repairId: view.repair.id, noteId: null, moment: 'as-found', ...entry.value })
  return (
    <div className="form">
      <ProblemList problems={act.problems} />
      <TextField label={service.shows} hint={service.showsHint} {...entry.at('remark')} />
      <PhotographField what={service.asFound} onKept={kept} />
      <div className="buttons">
        <button type="button" className="second" onClick={close}>
          {words.screens.form.no}
        </button>
      </div>
      <Asking act={act} />
    </div>
  )
}

function MarkForm({ view, close }: { view: Repair; close: () => void }) {
  const { words } = useShop()
  const { service } = words.bench
  const marks = marksOf(view.clock)
  const entry = useEntry({ mark: marks[0] ?? 'other', text: '' })
  const choices = Object.fromEntries(marks.map(mark => [mark, words.asFoundMarks[mark]]))
  const act = useAct(
    (input: { repairId: number; mark: AsFoundMark; text: string }) =>
      answer(api.bench.noteAsFound.$post({ json: input })),
    { said: () => service.said, after: close },
  )
  return (
    <OpenForm
      act={act}
      input={() => ({ repairId: view.repair.id, ...entry.value })}
      label={service.addMark}
      send={service.send}
      close={close}
    >
      <Choice label={service.mark} choices={choices} {...entry.at('mark')} />
      <TextArea label={service.text} {...entry.at('text')} />
    </OpenForm>
  )
}
