import { pictureOf } from '../../../core/photograph/picture.ts'
import { bad, type Checked, good, problem } from '../../../core/problems.ts'

/** The longest side a photograph is kept with, in points: enough to read a maker's mark. */
const longestSide = 2400

/** JPEG's quality, 0…1: below it the grain of wood begins to smear. From memory. */
const quality = 0.85

/** The heaviest file that is looked at, in megabytes. */
const heaviestMegabytes = 60

function drawn(bitmap: ImageBitmap): OffscreenCanvas {
  const scale = Math.min(1, longestSide / Math.max(bitmap.width, bitmap.height))
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(bitmap.width * scale)),
    Math.max(1, Math.round(bitmap.height * scale)),
  )
  const pen = canvas.getContext('2d', { alpha: false })
  if (!pen) throw new Error('no canvas')
  // JPEG knows no glass: what was clear in a PNG is white.
  pen.fillStyle = '#fff'
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
  return canvas
}

async function redrawn(blob: Blob): Promise<Blob> {
  const bitmap = await createImageBitmap(blob, { imageOrientation: 'from-image' })
  try {
    return await drawn(bitmap).convertToBlob({ type: 'image/jpeg', quality })
  } finally {
    bitmap.close()
  }
}

/**
 * The photograph upright, at most `longestSide` long, as a fresh JPEG: drawn anew, it has nothing of the camera's notes, so no place and
 * no time. Refuses by size first, then by its own bytes, before anything tries to show it.
 */
export async function reduced(file: Blob): Promise<Checked<Blob>> {
  if (file.size > heaviestMegabytes * 1024 * 1024)
    return bad([problem('photograph.tooHeavy', '', { most: heaviestMegabytes })])
  const bytes = new Uint8Array(await file.arrayBuffer())
  const picture = pictureOf(bytes)
  if (!picture.ok) return picture
  try {
    return good(await redrawn(new Blob([bytes], { type: picture.value.mediaType })))
  } catch {
    return bad([problem('photograph.unreadable', '')])
  }
}
