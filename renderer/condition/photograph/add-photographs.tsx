import { isToCollect } from '../../../core/standing/stages.ts'
import type { PhotographMoment } from '../../../core/vocabulary/intake.ts'
import { answer, api } from '../../api.ts'
import { Asking, useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, TextField } from '../../parts/field.tsx'
import { More } from '../../parts/pane.tsx'
import { ProblemList } from '../../parts/problems.tsx'
import type { Repair } from '../../repair/repair.ts'
import { useShop } from '../../shop.tsx'
import { noteSaid } from '../pins.ts'
import { PhotographField } from './photograph-field.tsx'

/** When a photograph taken now most likely shows the clock. */
const momentNow = ({ standing: { stage } }: Repair): PhotographMoment =>
  isToCollect(stage) ? 'hand-over' : stage === 'taken-in' ? 'intake' : 'bench'

/** Puts photographs beside a repair that is in the shop: of the whole clock, or of one condition note. */
export function AddPhotographs({ repair }: { repair: Repair }) {
  const { words } = useShop()
  const { condition } = words
  const entry = useEntry({ moment: momentNow(repair), noteId: '', remark: '' })
  const act = useAct(
    (input: Parameters<typeof api.photographs.attach.$post>[0]['json']) =>
      answer(api.photographs.attach.$post({ json: input })),
    { said: () => condition.attached },
  )
  const { noteId, ...given } = entry.value
  const kept = (hash: string) =>
    act.run({ hash, repairId: repair.repair.id, noteId: noteId ? Number(noteId) : null, ...given })
  const notes = repair.condition.filter(note => note.struckReason === null)
  const shows = Object.fromEntries(notes.map(note => [String(note.id), noteSaid(words, note)]))
  return (
    <More label={condition.add}>
      <div className="form">
        <ProblemList problems={act.problems} />
        <div className="fields">
          <Choice label={condition.moment} choices={condition.moments} {...entry.at('moment')} />
          <Choice
            label={condition.shows}
            choices={shows}
            empty={condition.wholeClock}
            {...entry.at('noteId')}
          />
          <TextField label={condition.remark} {...entry.at('remark')} />
        </div>
        <PhotographField what={shows[noteId] ?? condition.wholeClock} onKept={kept} />
        <Asking act={act} />
      </div>
    </More>
  )
}
