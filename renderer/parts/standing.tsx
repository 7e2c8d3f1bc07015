import { type Stage, stages } from '../../core/standing/standing.ts'
import type { WaitReason } from '../../core/vocabulary/work.ts'
import { useWords } from '../words.ts'
import { CountWheel } from './count-wheel.tsx'

/** Where a repair stands: the count wheel and its words. `waitingFor` says what a waiting repair waits for. */
export function Standing({ stage, waitingFor }: { stage: Stage; waitingFor?: WaitReason | null }) {
  const { screens } = useWords()
  const words = stage === 'waiting' && waitingFor ? screens.waitingFor[waitingFor] : screens.stages[stage]
  return (
    <span className="standing">
      <CountWheel passed={stages[stage].notches} />
      <span>{words}</span>
    </span>
  )
}
