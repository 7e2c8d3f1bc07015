import { Section } from '../parts/page.tsx'
import { EndedRuns } from '../shelf/runs-before.tsx'
import { useShop } from '../shop.tsx'
import type { Repair } from './repair.ts'

/** How the clock was proved: every run that ended, or why it is ready without one. */
export function RunsSection({ view }: { view: Repair }) {
  const { repair } = useShop().words
  const ended = view.runs.filter(run => run.endedAt !== null)
  const passed = ended.some(run => run.outcome === 'passed')
  const { readyReason } = view.repair
  if (ended.length === 0 && readyReason === '') return null
  return (
    <Section title={repair.sections.runs}>
      <EndedRuns runs={ended} />
      {readyReason !== '' && !passed && <p>{repair.readyWithout(readyReason)}</p>}
    </Section>
  )
}
