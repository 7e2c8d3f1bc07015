/** A picture's size in points. */
export interface Size {
  readonly width: number
  readonly height: number
}

/** The whole number of `length` bytes at `at`, most significant first; NaN beyond the end. */
export function bigEndian(bytes: Uint8Array, at: number, length: number): number {
  let value = 0
  for (let i = 0; i < length; i++) value = value * 256 + (bytes[at + i] ?? Number.NaN)
  return value
}

/** The whole number of `length` bytes at `at`, least significant first; NaN beyond the end. */
export function littleEndian(bytes: Uint8Array, at: number, length: number): number {
  let value = 0
  for (let i = length - 1; i >= 0; i--) value = value * 256 + (bytes[at + i] ?? Number.NaN)
  return value
}
