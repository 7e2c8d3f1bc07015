import { readFileSync } from 'node:fs'
import { join } from 'node:path'

/** A picture of the tests: 64 by 48 points, a quarter each of red, green, blue and white in reading order. */
export const picture = (name: 'quadrants.jpg' | 'quadrants.png' | 'lossy.webp' | 'lossless.webp'): Buffer =>
  readFileSync(join(import.meta.dirname, name))

const entry = (tag: number, type: number, count: number, value: number | string): Buffer => {
  const bytes = Buffer.alloc(12)
  bytes.writeUInt16BE(tag, 0)
  bytes.writeUInt16BE(type, 2)
  bytes.writeUInt32BE(count, 4)
  if (typeof value === 'string') bytes.write(value, 8, 'latin1')
  else if (type === 3) bytes.writeUInt16BE(value, 8)
  else bytes.writeUInt32BE(value, 8)
  return bytes
}

const directory = (...entries: Buffer[]): Buffer => {
  const count = Buffer.alloc(2)
  count.writeUInt16BE(entries.length)
  return Buffer.concat([count, ...entries, Buffer.alloc(4)])
}

/** Three fractions: degrees, minutes and seconds of an angle. */
const angle = (...parts: number[]): Buffer => {
  const bytes = Buffer.alloc(24)
  parts.forEach((part, i) => {
    bytes.writeUInt32BE(part, i * 8)
    bytes.writeUInt32BE(1, i * 8 + 4)
  })
  return bytes
}

/**
 * The JPEG with an Exif segment as a camera writes it: `orientation` (tag 0112) and a place on earth (GPS directory, tag 8825).
 * Source: Exif 3.0 (CIPA DC-008), 4.6.
 */
export function withExif(jpeg: Buffer, orientation: number): Buffer {
  const first = 8
  const gps = first + 2 + 2 * 12 + 4
  const angles = gps + 2 + 4 * 12 + 4
  const tiff = Buffer.concat([
    Buffer.from('MM\0*\0\0\0\x08', 'latin1'),
    directory(entry(0x0112, 3, 1, orientation), entry(0x8825, 4, 1, gps)),
    directory(entry(1, 2, 2, 'N'), entry(2, 5, 3, angles), entry(3, 2, 2, 'W'), entry(4, 5, 3, angles + 24)),
    angle(51, 36, 33),
    angle(2, 31, 12),
  ])
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff])
  const head = Buffer.from([0xff, 0xe1, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)])
}
