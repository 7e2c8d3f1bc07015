import { answer, api } from '../../api.ts'
import { useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { DateField } from '../../parts/field.tsx'
import { useSeenAs } from '../../parts/seen.ts'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { ReckonedDate } from '../reckoned-date.tsx'
import type { ActProps } from '../repair.ts'

/** Says a new estimated date. */
export function EstimatedDate({ view: { repair }, close }: ActProps) {
  const { dateForm } = useShop().words.repair
  const entry = useEntry({ estimatedOn: repair.estimatedOn ?? '' })
  const act = useAct(
    (input: Parameters<typeof api.counter.estimateDate.$post>[0]['json']) =>
      answer(api.counter.estimateDate.$post({ json: input })),
    { said: () => dateForm.said, after: close },
  )
  const seen = useSeenAs(repair.estimatedOn, act.problems)
  const input = () => ({
    repairId: repair.id,
    estimatedOn: entry.value.estimatedOn || null,
    seen: { estimatedOn: seen },
  })
  return (
    <ActPanel title={dateForm.title} act={act} input={input} send={dateForm.send} close={close}>
      <ReckonedDate number={repair.number} take={date => entry.set({ estimatedOn: date })} />
      <DateField label={dateForm.date} hint={dateForm.hint} {...entry.at('estimatedOn')} />
    </ActPanel>
  )
}
