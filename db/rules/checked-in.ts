import { type Minor, parseMinor } from '../../core/money/minor.ts'
import { bad, type Checked, good, problem } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { Refusal } from '../rows/refusal.ts'

/** The value, or a refusal with everything that is wrong. */
export function accepted<T>(checked: Checked<T>): T {
  if (checked.ok) return checked.value
  throw new Refusal(checked.problems)
}

/** An amount typed in major units of the shop's currency, not negative; null stays null. */
export function amountIn(settings: Settings, text: string | null, field: string): Checked<Minor | null> {
  if (text === null) return good(null)
  const amount = parseMinor(text, settings.place.currency, field)
  return amount.ok && amount.value < 0 ? bad([problem('number.negative', field)]) : amount
}
