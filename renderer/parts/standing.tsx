import { type Stage, stages } from '../../core/standing/stages.ts'
import type { WaitReason } from '../../core/vocabulary/work.ts'
import type { Words } from '../../core/words/en/index.ts'
import { useWords } from '../words.ts'
import { CountWheel } from './count-wheel.tsx'

interface StandingProps {
  readonly stage: Stage
  /** What a waiting repair waits for. */
  readonly waitingFor?: WaitReason | null
  /** An estimate lies written that the owner has not been sent. */
  readonly toSend?: boolean
}

function standingWords({ screens }: Words, { stage, waitingFor, toSend }: StandingProps): string {
  if (toSend) return screens.toSend
  return stage === 'waiting' && waitingFor ? screens.waitingFor[waitingFor] : screens.stages[stage]
}

/** Where a repair stands: the count wheel and its words. */
export function Standing(props: StandingProps) {
  const words = standingWords(useWords(), props)
  return (
    <span className="standing">
      <CountWheel passed={stages[props.stage].notches} />
      <span>{words}</span>
    </span>
  )
}
