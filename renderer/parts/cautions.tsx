import { type Caution, mustAcknowledge } from '../../core/cautions/cautions.ts'
import { useWords } from '../words.ts'

interface CautionsProps {
  readonly codes: readonly Caution[]
  /** Given where work may hurt someone: the harmful ones must be ticked before going on. */
  readonly acknowledged?: boolean
  readonly onAcknowledge?: (yes: boolean) => void
}

/** True when one of the cautions speaks of harm to a person, so that it must be acknowledged before work. */
export const needAcknowledging = (codes: readonly Caution[]): boolean => codes.some(mustAcknowledge)

/** The cautions that follow from what is recorded of a clock, those of harm first. Nothing when there are none. */
export function Cautions({ codes, acknowledged = false, onAcknowledge }: CautionsProps) {
  const { screens, cautions } = useWords()
  if (codes.length === 0) return null
  const ordered = [...codes.filter(mustAcknowledge), ...codes.filter(code => !mustAcknowledge(code))]
  return (
    <aside className="note" aria-label={screens.caution.label}>
      <ul>
        {ordered.map(code => (
          <li key={code}>{cautions[code]}</li>
        ))}
      </ul>
      <p className="defer">{screens.caution.defer}</p>
      {onAcknowledge && needAcknowledging(codes) && (
        <label className="tick">
          <input
            type="checkbox"
            name="acknowledged"
            checked={acknowledged}
            onChange={event => onAcknowledge(event.target.checked)}
          />
          {screens.caution.acknowledge}
        </label>
      )}
    </aside>
  )
}
