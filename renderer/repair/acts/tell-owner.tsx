import type { Way } from '../../../core/vocabulary/work.ts'
import { answer, api } from '../../api.ts'
import { useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, TextField } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps } from '../repair.ts'

/** Records that the owner was told the clock is ready. */
export function TellOwner({ view, close }: ActProps) {
  const { words } = useShop()
  const { tellForm } = words.repair
  const entry = useEntry({ way: 'telephone' as Way, note: '' })
  const act = useAct(
    (input: { repairId: number; way: Way; note: string }) =>
      answer(api.counter.tellOwner.$post({ json: input })),
    { said: () => tellForm.said, after: close },
  )
  const input = () => ({ repairId: view.repair.id, ...entry.value })
  return (
    <ActPanel title={tellForm.title} act={act} input={input} send={tellForm.send} close={close}>
      <div className="fields form">
        <Choice label={tellForm.way} choices={words.ways} {...entry.at('way')} />
        <TextField label={tellForm.note} {...entry.at('note')} />
      </div>
    </ActPanel>
  )
}
