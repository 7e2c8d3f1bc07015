import { type Caution, mustAcknowledge } from '../../core/cautions/cautions.ts'
import { useWords } from '../words.ts'

/** The cautions that follow from what is recorded of a clock, those of harm first. Nothing when there are none. */
export function Cautions({ codes }: { readonly codes: readonly Caution[] }) {
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
    </aside>
  )
}
