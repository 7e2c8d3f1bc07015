/** 1 in = 25.4 mm, exactly: International Yard and Pound Agreement, 1959 (NIST SP 811, appendix B). */
const mmPerInch = 25.4

/** What one of each unit is in the whole the ledger keeps: millimetres for lengths, grams for weights. 1 lb as for the inch. */
const wholes = { mm: 1, in: mmPerInch, kg: 1000, lb: 453.59237 } as const

/** A unit sizes and weights are typed and shown in. */
export type MeasureUnit = keyof typeof wholes

/** What a shop weighs in, by what it measures in. */
export const weightUnit = { mm: 'kg', in: 'lb' } as const

/** A length typed in `unit`, in millimetres, exactly. */
export const mmOf = (value: number, unit: 'mm' | 'in'): number => value * wholes[unit]

/** A size or weight in whole millimetres or grams, from what was typed in `unit`. */
export const wholeOf = (value: number, unit: MeasureUnit): number => Math.round(value * wholes[unit])

/** Whole millimetres or grams in `unit`, with the fewest decimals that mean the same whole again. */
export function measureIn(whole: number, unit: MeasureUnit): number {
  for (let decimals = 0; ; decimals += 1) {
    const value = Number((whole / wholes[unit]).toFixed(decimals))
    if (wholeOf(value, unit) === whole) return value
  }
}

/** The outside of a thing or the room for one, in whole millimetres; null where nobody measured. */
export interface Box {
  readonly heightMm: number | null
  readonly widthMm: number | null
  readonly depthMm: number | null
}

/** How large and heavy a clock is; null where nobody measured. */
export interface ClockSize extends Box {
  /** With its weights, in whole grams. */
  readonly weightG: number | null
}

/** The sides of a box, in the order they are said. */
export const sides = ['heightMm', 'widthMm', 'depthMm'] as const satisfies readonly (keyof Box)[]
