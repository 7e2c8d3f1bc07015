import type { Settings } from './settings.ts'

/** True where the shop charges tax on any kind of line. */
export const chargesTax = ({ byKind }: Settings['tax']): boolean =>
  Object.values(byKind).some(taxes => taxes.length > 0)
