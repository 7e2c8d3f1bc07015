import type { LineKind } from '../pricing/kinds/index.ts'
import type { Tax, TaxRules } from '../pricing/price-input.ts'
import type { Settings } from './settings.ts'

/** True where the shop charges tax on any kind of line. */
export const chargesTax = ({ byKind }: Settings['tax']): boolean =>
  Object.values(byKind).some(taxes => taxes.length > 0)

/** The shop's tax rules as they go on a document. */
export const taxRules = ({ basis, mode, inclusive, aggregate }: Settings['tax']): TaxRules => ({
  basis,
  mode,
  inclusive,
  ...(aggregate === undefined ? {} : { aggregate }),
})

interface Taxed {
  readonly kind: LineKind
  /** Null or left out where the line follows the shop. */
  readonly taxes?: readonly Tax[] | null | undefined
}

/** The taxes on a line: its own where it says so, otherwise the shop's on lines of its kind. */
export const lineTaxes = ({ kind, taxes }: Taxed, { byKind }: Settings['tax']): readonly Tax[] =>
  taxes ?? byKind[kind]
