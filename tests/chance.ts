import { createHash } from 'node:crypto'

let drawn = 0

/** Bytes that look random and are the same in every run: chance as the tests give it. */
export function random(bytes: number): Uint8Array {
  const pieces: Buffer[] = []
  for (let length = 0; length < bytes; length += 32) {
    drawn += 1
    pieces.push(createHash('sha256').update(`chance ${drawn}`).digest())
  }
  return new Uint8Array(Buffer.concat(pieces).subarray(0, bytes))
}
