import { answer, api } from '../../api.ts'
import { useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { TextField } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps } from '../repair.ts'

/** Takes a clock that was ready back to the bench, and why. */
export function BackToBench({ view: { repair }, close }: ActProps) {
  const { words } = useShop()
  const { backForm } = words.repair
  const entry = useEntry({ reason: '' })
  const act = useAct(
    (input: { repairId: number; reason: string }) => answer(api.bench.backToBench.$post({ json: input })),
    { said: () => backForm.said(repair.number), after: close },
  )
  return (
    <ActPanel
      title={words.screens.acts['back-to-bench']}
      act={act}
      input={() => ({ repairId: repair.id, ...entry.value })}
      send={backForm.send}
      close={close}
    >
      <TextField label={backForm.reason} {...entry.at('reason')} />
    </ActPanel>
  )
}
