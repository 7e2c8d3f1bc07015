/** True for a phone that was read and is kept as E.164; any other is kept as it was written. */
export const isDialled = (kept: string): boolean => /^\+\d+$/.test(kept)
