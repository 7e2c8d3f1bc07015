/** The accounts of the shop's books that are shown entry by entry, in the order they are offered. */
export const accountNames = [
  'owed',
  'held',
  'cash',
  'card',
  'transfer',
  'cheque',
  'income',
  'tax',
  'writtenOff',
  'rounding',
  'drawer',
  'taken',
] as const
export type AccountName = (typeof accountNames)[number]
