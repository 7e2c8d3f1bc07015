import { answer, api } from '../../api.ts'
import { useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { TextField } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps } from '../repair.ts'

/** Says a clock is ready without a run-in, and why none is needed. */
export function DeclareReady({ view: { repair }, close }: ActProps) {
  const { readyForm } = useShop().words.repair
  const entry = useEntry({ reason: '' })
  const act = useAct(
    (input: { repairId: number; reason: string }) => answer(api.bench.declareReady.$post({ json: input })),
    { said: () => readyForm.said(repair.number), after: close },
  )
  return (
    <ActPanel
      title={readyForm.title}
      act={act}
      input={() => ({ repairId: repair.id, ...entry.value })}
      send={readyForm.send}
      close={close}
    >
      <TextField label={readyForm.reason} {...entry.at('reason')} />
    </ActPanel>
  )
}
