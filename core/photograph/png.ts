import { bigEndian, type Size } from './size.ts'

const crcTable = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c
})

/** The check sum of a chunk's type and data. Source: W3C PNG, Annex D (sample CRC). */
function checkSum(bytes: Uint8Array, from: number, to: number): number {
  let c = 0xffffffff
  for (let i = from; i < to; i++) c = (crcTable[(c ^ (bytes[i] ?? 0)) & 0xff] ?? 0) ^ (c >>> 8)
  return (c ^ 0xffffffff) >>> 0
}

const typeAt = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4))

/** The size in a PNG's header; undefined where a chunk is cut off or does not agree with its check sum. Source: W3C PNG, 5 (datastream structure). */
export function pngSize(bytes: Uint8Array): Size | undefined {
  let at = 8
  let drawn = false
  if (typeAt(bytes, at + 4) !== 'IHDR') return undefined
  while (at + 12 <= bytes.length) {
    const end = at + 8 + bigEndian(bytes, at, 4)
    if (!(end + 4 <= bytes.length) || checkSum(bytes, at + 4, end) !== bigEndian(bytes, end, 4))
      return undefined
    const type = typeAt(bytes, at + 4)
    drawn ||= type === 'IDAT'
    if (type === 'IEND')
      return drawn ? { width: bigEndian(bytes, 16, 4), height: bigEndian(bytes, 20, 4) } : undefined
    at = end + 4
  }
  return undefined
}
