import type { Component, Grade } from '../../../core/vocabulary/intake.ts'
import { answer, api } from '../../api.ts'
import { ConditionFold } from '../../condition/condition-fold.tsx'
import { blankNote } from '../../counter/take-in-entry.ts'
import { useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, TextField } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps } from '../repair.ts'

/** Adds to the condition report, as when something is seen only after the owner has left. */
export function Note({ view, close }: ActProps) {
  const { words } = useShop()
  const { takeIn } = words.counter
  const { noteForm } = words.repair
  const entry = useEntry({ ...blankNote, component: 'case' as Component, grade: 'marked' as Grade })
  const act = useAct(
    (input: Parameters<typeof api.counter.noteCondition.$post>[0]['json']) =>
      answer(api.counter.noteCondition.$post({ json: input })),
    { said: () => noteForm.said, after: close },
  )
  return (
    <ActPanel
      title={noteForm.title}
      act={act}
      input={() => ({ repairId: view.repair.id, ...entry.value })}
      send={noteForm.send}
      close={close}
    >
      <div className="fields form">
        <Choice label={takeIn.component} choices={words.components} {...entry.at('component')} />
        <Choice label={takeIn.grade} choices={words.grades} {...entry.at('grade')} />
        <Choice label={takeIn.finish} choices={words.finishes} empty="" {...entry.at('finish')} />
        <Choice
          label={takeIn.earlierRepair}
          choices={words.earlierRepairs}
          empty=""
          {...entry.at('earlierRepair')}
        />
        <TextField label={takeIn.remark} {...entry.at('remark')} />
      </div>
      <ConditionFold
        form={view.clock.form}
        notes={[{ number: view.condition.length + 1, note: entry.value }]}
        newNumber={null}
        onChange={(_, { component, ...change }) => entry.set({ ...change, ...(component && { component }) })}
      />
    </ActPanel>
  )
}
