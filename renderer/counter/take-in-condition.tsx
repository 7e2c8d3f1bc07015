import { ConditionFold } from '../condition/condition-fold.tsx'
import type { LinesState } from '../parts/entry.ts'
import { Choice, TextField } from '../parts/field.tsx'
import { Section } from '../parts/page.tsx'
import { RemoveLine } from '../parts/remove-line.tsx'
import { useShop } from '../shop.tsx'
import { formOf, type NoteLine, type TakeInEntry } from './take-in-entry.ts'

/** Earlier damage on record before the shop touches the clock; choosing a component opens the next line. */
export function ConditionSection({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  return (
    <Section title={takeIn.condition} note={takeIn.conditionNote}>
      <NoteLines notes={entry.condition} />
      <OnDrawing entry={entry} />
    </Section>
  )
}

/** The same notes on the drawing of this form of clock, with photographs. */
function OnDrawing({ entry }: { entry: TakeInEntry }) {
  const { condition, photographs, setPhotographs } = entry
  const blank = condition.lines.findIndex(line => line.blank)
  return (
    <ConditionFold
      form={formOf(entry)}
      notes={condition.lines.flatMap((line, index) =>
        line.blank ? [] : [{ number: index + 1, note: line.line }],
      )}
      newNumber={blank < 0 ? null : blank + 1}
      onChange={(number, change) => condition.set(number - 1, change)}
      whole={{ hashes: photographs, onChange: setPhotographs }}
    />
  )
}

/** Condition notes line by line. */
function NoteLines({ notes }: { notes: LinesState<NoteLine> }) {
  return (
    <div className="lines">
      {notes.lines.map(({ key, blank }, index) => (
        <NoteFields key={key} notes={notes} index={index} blank={blank} />
      ))}
    </div>
  )
}

function NoteFields({ notes, index, blank }: { notes: LinesState<NoteLine>; index: number; blank: boolean }) {
  const { words } = useShop()
  const { takeIn } = words.counter
  const hideLabel = index > 0
  return (
    <fieldset className="line-fields note-fields">
      <legend className="hidden-words">{takeIn.noteOf(index + 1)}</legend>
      <Choice
        label={takeIn.component}
        hideLabel={hideLabel}
        choices={words.components}
        empty={takeIn.noComponent}
        {...notes.at(index, 'component')}
      />
      <Choice
        label={takeIn.grade}
        hideLabel={hideLabel}
        choices={words.grades}
        {...notes.at(index, 'grade')}
      />
      <Choice
        label={takeIn.finish}
        hideLabel={hideLabel}
        choices={words.finishes}
        empty=""
        {...notes.at(index, 'finish')}
      />
      <Choice
        label={takeIn.earlierRepair}
        hideLabel={hideLabel}
        choices={words.earlierRepairs}
        empty=""
        {...notes.at(index, 'earlierRepair')}
      />
      <TextField label={takeIn.remark} hideLabel={hideLabel} {...notes.at(index, 'remark')} />
      {!blank && <RemoveLine what={takeIn.noteOf(index + 1)} onRemove={() => notes.remove(index)} />}
    </fieldset>
  )
}
