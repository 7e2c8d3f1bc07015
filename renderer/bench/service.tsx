import { type AsFoundMark, asFoundMarks } from '../../core/vocabulary/work.ts'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, TextArea } from '../parts/field.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import { More } from '../parts/pane.tsx'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import type { Card } from './bench.ts'
import { StrikeOut } from './strike-out.tsx'

type Note = Card['asFound'][number]

/** The movement as it was found, and the steps of its service with what was found shown again where it is needed. */
export function ServiceSection({ view }: { view: Repair }) {
  const { words } = useShop()
  const { service } = words.bench
  const { asFound } = view.bench
  return (
    <Section title={service.heading} note={service.note}>
      <h3 className="group-label">{service.asFound}</h3>
      {asFound.length === 0 && <p className="quiet">{service.none}</p>}
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
      <Opened label={service.addMark}>{close => <MarkForm view={view} close={close} />}</Opened>
      <More label={service.steps}>
        <Steps card={view.bench} />
      </More>
    </Section>
  )
}

function NoteWords({ note }: { note: Note }) {
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

function Steps({ card }: { card: Card }) {
  const { words } = useShop()
  const standing = card.asFound.filter(note => note.struckReason === null)
  return (
    <ol className="steps">
      {card.steps.map(step => (
        <li key={step.code}>
          {words.bench.steps[step.code]}
          {step.caution && <p className="note">{words.cautions[step.caution]}</p>}
          {step.code !== 'as-found' && (
            <ul className="found-again">
              {standing
                .filter(note => step.marks.includes(note.mark))
                .map(note => (
                  <li key={note.id}>
                    <NoteWords note={note} />
                  </li>
                ))}
            </ul>
          )}
        </li>
      ))}
    </ol>
  )
}

function MarkForm({ view, close }: { view: Repair; close: () => void }) {
  const { words } = useShop()
  const { service } = words.bench
  const entry = useEntry({ mark: asFoundMarks[0] as AsFoundMark, text: '' })
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
      <Choice label={service.mark} choices={words.asFoundMarks} {...entry.at('mark')} />
      <TextArea label={service.text} {...entry.at('text')} />
    </OpenForm>
  )
}
