import { type Column, Ledger } from '../parts/ledger.tsx'
import { timeWords } from '../parts/time-words.ts'
import { useShop } from '../shop.tsx'
import type { Card } from './bench.ts'

type WorkRow = Card['labour']['byWork'][number]

/** Estimated against worked hours of one repair by kind of work, with the tasks of each. */
export function HoursByWork({ rows }: { rows: Card['labour']['byWork'] }) {
  const { words } = useShop()
  const { byWork } = words.bench
  const over = ({ estimatedMinutes, workedMinutes }: WorkRow) =>
    estimatedMinutes === null ? null : workedMinutes - estimatedMinutes
  const columns: Column<WorkRow>[] = [
    {
      label: byWork.work,
      kind: 'entry',
      cell: row => (
        <>
          {byWork.works[row.work]}
          <small>
            {row.tasks
              .map(({ task, minutes }) => `${words.tasks[task]} ${timeWords(words, minutes)}`)
              .join(', ')}
          </small>
        </>
      ),
    },
    {
      label: byWork.estimated,
      kind: 'figure',
      cell: row =>
        row.estimatedMinutes === null ? words.screens.none : timeWords(words, row.estimatedMinutes),
    },
    { label: byWork.worked, kind: 'figure', cell: row => timeWords(words, row.workedMinutes) },
    {
      label: byWork.left,
      kind: 'figure',
      cell: row => {
        const minutes = over(row)
        if (minutes === null) return byWork.notEstimated
        const time = timeWords(words, Math.abs(minutes))
        return minutes > 0 ? <b className="late">{byWork.over(time)}</b> : byWork.under(time)
      },
    },
  ]
  return (
    <Ledger
      plain
      caption={byWork.heading}
      columns={columns}
      groups={[{ title: '', rows }]}
      rowKey={row => row.work}
      empty={byWork.none}
    />
  )
}
