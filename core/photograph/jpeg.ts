import { bigEndian, type Size } from './size.ts'

const startOfScan = 0xda
const endOfImage = 0xd9

/** SOF0 to SOF15 but the three of the range that mean tables. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc

/** Markers that stand alone, without a length behind them. */
const standsAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)

/** True where the end of the image is marked somewhere after `at`; a file that breaks off has none. */
function ends(bytes: Uint8Array, at: number): boolean {
  for (let i = bytes.length - 2; i >= at; i--)
    if (bytes[i] === 0xff && bytes[i + 1] === endOfImage) return true
  return false
}

/** The size in a JPEG's frame header; undefined where it is not whole. Source: ISO/IEC 10918-1, Annex B (marker segments). */
export function jpegSize(bytes: Uint8Array): Size | undefined {
  let size: Size | undefined
  let at = 2
  while (at < bytes.length) {
    if (bytes[at] !== 0xff) return undefined
    const marker = bytes[at + 1] ?? endOfImage
    if (marker === startOfScan) return ends(bytes, at) ? size : undefined
    if (marker === endOfImage) return undefined
    // Fill bytes may stand before a marker.
    if (marker === 0xff) at += 1
    else if (standsAlone(marker)) at += 2
    else {
      if (isFrame(marker)) size = { height: bigEndian(bytes, at + 5, 2), width: bigEndian(bytes, at + 7, 2) }
      const length = bigEndian(bytes, at + 2, 2)
      if (!(length >= 2)) return undefined
      at += 2 + length
    }
  }
  return undefined
}
