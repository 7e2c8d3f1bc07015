import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useShop } from '../shop.tsx'
import { Chart } from './chart.tsx'
import { Log } from './log.tsx'
import { Figures, Verdict } from './run-figures.tsx'
import './shelf.css'
import { type RunView, runQuery } from './shelf.ts'

type Before = RunView['before'][number]

/** The runs that ended before this one, each with the reason; opened, its chart, figures and log as they were left. */
export function RunsBefore({ runs }: { runs: readonly Before[] }) {
  const { before } = useShop().words.shelf
  if (runs.length === 0) return null
  return (
    <section className="runs-before" aria-label={before.heading}>
      <h3>{before.heading}</h3>
      <EndedRuns runs={runs} />
    </section>
  )
}

/** Runs that ended, each a line to be opened. */
export const EndedRuns = ({ runs }: { runs: readonly Before[] }) =>
  runs.map(run => <RunBefore key={run.id} run={run} />)

function RunBefore({ run }: { run: Before }) {
  const { words, formats } = useShop()
  const { before } = words.shelf
  const [open, setOpen] = useState(false)
  const outcome = run.outcome === null ? '' : before.outcomes[run.outcome]
  const ended = run.endedOn === null ? '' : formats.date(run.endedOn)
  return (
    <details className="more" onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>{before.line(formats.date(run.startedOn), ended, outcome)}</summary>
      {run.reason !== '' && <p>{run.reason}</p>}
      {open && <Whole runId={run.id} />}
    </details>
  )
}

function Whole({ runId }: { runId: number }) {
  const { words } = useShop()
  const { data, error } = useQuery(runQuery(runId))
  if (error) return <p className="aside-words">{words.screens.unreachable}</p>
  if (!data) return null
  return (
    <div className="run-whole">
      <Chart view={data} />
      <Figures view={data} />
      <Verdict view={data} />
      <Log view={data} />
    </div>
  )
}
