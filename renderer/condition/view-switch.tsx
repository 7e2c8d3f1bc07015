import { useId } from 'react'
import { type View, views } from '../../core/vocabulary/intake.ts'
import { FewChoice } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { type PinnedNote, pinsOn } from './pins.ts'

interface ViewSwitchProps {
  readonly view: View
  readonly onView: (view: View) => void
  readonly notes: readonly PinnedNote[]
}

/** Which side of the clock is shown; each says how many pins are on it. */
export function ViewSwitch({ view, onView, notes }: ViewSwitchProps) {
  const { condition } = useShop().words
  const name = useId()
  const choices = Object.fromEntries(
    views.map(one => [one, condition.viewWithPins(condition.views[one], pinsOn(notes, one).length)]),
  ) as Record<View, string>
  return (
    <div className="view-switch">
      <FewChoice name={name} label={condition.view} value={view} onChange={onView} choices={choices} />
    </div>
  )
}
