import { bigEndian, littleEndian, type Size } from './size.ts'

const lossyStart = 0x9d012a
const losslessSign = 0x2f

/** Where the first chunk's data begins: after `RIFF`, size, `WEBP`, the chunk's name and its size. */
const data = 20

function lossy(bytes: Uint8Array): Size | undefined {
  if (bigEndian(bytes, data + 3, 3) !== lossyStart) return undefined
  const side = (at: number) => littleEndian(bytes, at, 2) % 0x4000
  return { width: side(data + 6), height: side(data + 8) }
}

function lossless(bytes: Uint8Array): Size | undefined {
  if (bytes[data] !== losslessSign) return undefined
  const bits = littleEndian(bytes, data + 1, 4)
  return { width: (bits % 0x4000) + 1, height: (Math.floor(bits / 0x4000) % 0x4000) + 1 }
}

const extended = (bytes: Uint8Array): Size => ({
  width: littleEndian(bytes, data + 4, 3) + 1,
  height: littleEndian(bytes, data + 7, 3) + 1,
})

const layouts: Record<string, (bytes: Uint8Array) => Size | undefined> = {
  'VP8 ': lossy,
  VP8L: lossless,
  VP8X: extended,
}

/** The size in a WebP's first chunk; undefined where the file is shorter than it says. Source: RFC 9649, 2 (container, VP8X) and 3; RFC 6386, 9.1. */
export function webpSize(bytes: Uint8Array): Size | undefined {
  const whole = littleEndian(bytes, 4, 4) + 8 <= bytes.length && bytes.length > data + 10
  return whole ? layouts[String.fromCharCode(...bytes.subarray(12, 16))]?.(bytes) : undefined
}
