import { bad, type Checked, good, problem } from '../problems.ts'
import { jpegSize } from './jpeg.ts'
import { pngSize } from './png.ts'
import type { Size } from './size.ts'
import { webpSize } from './webp.ts'

/** The kinds of picture the ledger keeps, for those a paper can show, with the ending of their files. */
export const mediaTypes = { 'image/jpeg': 'jpg', 'image/png': 'png' } as const
export type MediaType = keyof typeof mediaTypes

/** The kinds a page can look at, and draw anew as one that is kept. */
type Seen = MediaType | 'image/webp'

/** Whether the ledger keeps pictures of this kind as they are. */
export const isKept = (mediaType: Seen): mediaType is MediaType => mediaType in mediaTypes

/** The most points a picture may have: 64 million fill a quarter of a gigabyte when it is shown. */
const mostPoints = 64_000_000

/** What a picture's own bytes say of it. */
export interface Picture extends Size {
  readonly mediaType: Seen
}

const begins = (bytes: Uint8Array, at: number, text: string): boolean =>
  [...text].every((sign, i) => bytes[at + i] === sign.charCodeAt(0))

/** The kind its first bytes tell, whatever its name or the sender says. */
function kindOf(bytes: Uint8Array): Seen | undefined {
  if (begins(bytes, 0, '\xff\xd8\xff')) return 'image/jpeg'
  if (begins(bytes, 0, '\x89PNG\r\n\x1a\n')) return 'image/png'
  if (begins(bytes, 0, 'RIFF') && begins(bytes, 8, 'WEBP')) return 'image/webp'
  return undefined
}

const sizeOf: Record<Seen, (bytes: Uint8Array) => Size | undefined> = {
  'image/jpeg': jpegSize,
  'image/png': pngSize,
  'image/webp': webpSize,
}

/**
 * What kind of picture the bytes are and its size in points. Refuses with `photograph.notAnImage` what is none,
 * `photograph.damaged` one that breaks off or makes no sense, `photograph.tooManyPoints` one that would fill the memory when shown.
 */
export function pictureOf(bytes: Uint8Array): Checked<Picture> {
  const mediaType = kindOf(bytes)
  if (!mediaType) return bad([problem('photograph.notAnImage', '')])
  const size = sizeOf[mediaType](bytes)
  if (!size || size.width === 0 || size.height === 0) return bad([problem('photograph.damaged', '')])
  if (size.width * size.height > mostPoints)
    return bad([problem('photograph.tooManyPoints', '', { most: mostPoints / 1_000_000 })])
  return good({ mediaType, ...size })
}
