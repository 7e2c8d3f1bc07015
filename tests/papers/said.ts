/** Every amount, whatever its name, that a paper's contents carry as an integer of minor units. */
export function amountsIn(value: unknown, key = ''): number[] {
  if (typeof value === 'number') return ['count', 'version', 'trains'].includes(key) ? [] : [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([inner, part]) => amountsIn(part, inner))
}

/** Texts that people typed, found by their key. */
export function textsIn(value: unknown, keys: readonly string[], key = ''): string[] {
  if (typeof value === 'string') return keys.includes(key) ? [value] : []
  if (typeof value !== 'object' || value === null) return []
  const isList = Array.isArray(value)
  return Object.entries(value).flatMap(([inner, part]) => textsIn(part, keys, isList ? key : inner))
}

/** Keys under which people's own texts stand. */
export const typed = [
  'name',
  'addressLines',
  'phone',
  'email',
  'taxNumber',
  'maker',
  'serial',
  'marks',
  'description',
  'fault',
  'remark',
  'notes',
  'reason',
  'reference',
  'work',
  'tag',
  'number',
  'text',
  'agreed',
  'toName',
  'authority',
  'unpaidReason',
  'decidedBy',
  'repairNumber',
]
