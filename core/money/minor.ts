declare const minorUnits: unique symbol

/** An amount of money in the currency's minor units (cents, pence, yen): a safe integer, never a float of major units. */
export type Minor = number & { readonly [minorUnits]: true }

/** The integer `n` as an amount in minor units. Throws a RangeError when it is not a safe integer: that is a bug, not input. */
export function minor(n: number): Minor {
  if (!Number.isSafeInteger(n)) throw new RangeError(`not a whole number of minor units: ${n}`)
  return (Object.is(n, -0) ? 0 : n) as Minor
}
