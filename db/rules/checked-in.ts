import { type Minor, parseAmount } from '../../core/money/minor.ts'
import { type Checked, good } from '../../core/problems.ts'
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
  return parseAmount(text, settings.place.currency, field)
}
