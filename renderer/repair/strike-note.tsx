import { useState } from 'react'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'

/** Strikes out a condition note with a reason; opened by a quiet button beside the note. */
export function StrikeNote({ noteId, what }: { noteId: number; what: string }) {
  const { repair, screens } = useShop().words
  const [open, setOpen] = useState(false)
  const entry = useEntry({ reason: '' })
  const act = useAct(
    (input: { noteId: number; reason: string }) => answer(api.counter.strikeNote.$post({ json: input })),
    { said: () => repair.strike.said },
  )
  if (!open)
    return (
      <button
        type="button"
        className="plain"
        aria-label={`${repair.strike.act}: ${what}`}
        onClick={() => setOpen(true)}
      >
        {repair.strike.act}
      </button>
    )
  return (
    <ActForm
      act={act}
      input={() => ({ noteId, ...entry.value })}
      focusFirst
      label={`${repair.strike.act}: ${what}`}
    >
      <TextField label={repair.strike.reason} {...entry.at('reason')} />
      <div className="buttons">
        <Send act={act}>{repair.strike.send}</Send>
        <button type="button" className="second" onClick={() => setOpen(false)}>
          {screens.form.no}
        </button>
      </div>
    </ActForm>
  )
}
