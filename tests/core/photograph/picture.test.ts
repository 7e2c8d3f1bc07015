import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pictureOf } from '../../../core/photograph/picture.ts'
import { picture, withExif } from '../../pictures/pictures.ts'

const codes = (bytes: Uint8Array) => {
  const checked = pictureOf(bytes)
  return checked.ok ? [] : checked.problems.map(p => p.code)
}

const files = ['quadrants.jpg', 'quadrants.png', 'lossy.webp', 'lossless.webp'] as const

describe('what a picture is', () => {
  it.each([
    ['quadrants.jpg', 'image/jpeg'],
    ['quadrants.png', 'image/png'],
    ['lossy.webp', 'image/webp'],
    ['lossless.webp', 'image/webp'],
  ] as const)('is told by its own bytes: %s', (name, mediaType) => {
    expect(pictureOf(picture(name))).toEqual({ ok: true, value: { mediaType, width: 64, height: 48 } })
  })

  it('is told past the segments a camera puts before the frame', () => {
    expect(pictureOf(withExif(picture('quadrants.jpg'), 6))).toMatchObject({ ok: true, value: { width: 64 } })
  })

  it('is not told by a name: text, a drawing in text, a PDF and nothing at all are no photographs', () => {
    const others = [
      '',
      'GIF',
      '<svg xmlns="http://www.w3.org/2000/svg"/>',
      '%PDF-1.7',
      'A receipt, renamed .jpg',
    ]
    for (const text of others) expect(codes(Buffer.from(text))).toEqual(['photograph.notAnImage'])
  })
})

describe('a damaged picture', () => {
  it.each(files)('is refused wherever it breaks off: %s', name => {
    const whole = picture(name)
    for (let length = 12; length < whole.length; length++)
      expect(codes(whole.subarray(0, length)), `${length} bytes`).toHaveLength(1)
  })

  it('is refused where a PNG’s chunk does not agree with its check sum', () => {
    const bytes = picture('quadrants.png')
    bytes.writeUInt32BE(640, 16)
    expect(codes(bytes)).toEqual(['photograph.damaged'])
  })

  it('never throws, whatever the bytes', () => {
    const start = fc.constantFrom(...files.map(name => picture(name)))
    const change = fc.record({ at: fc.nat(), byte: fc.integer({ min: 0, max: 255 }) })
    fc.assert(
      fc.property(start, fc.array(change, { maxLength: 20 }), fc.nat(), (whole, changes, cut) => {
        const bytes = new Uint8Array(whole.subarray(0, cut % (whole.length + 1)))
        for (const { at, byte } of changes) if (bytes.length > 0) bytes[at % bytes.length] = byte
        const checked = pictureOf(bytes)
        if (checked.ok) expect(checked.value.width * checked.value.height).toBeGreaterThan(0)
        else expect(checked.problems).toHaveLength(1)
      }),
    )
  })

  it('that says it is vast is refused before anything tries to show it', () => {
    const bytes = picture('quadrants.jpg')
    const frame = bytes.indexOf(Buffer.from([0xff, 0xc0]))
    bytes.writeUInt16BE(65_000, frame + 5)
    bytes.writeUInt16BE(65_000, frame + 7)
    expect(codes(bytes)).toEqual(['photograph.tooManyPoints'])
  })
})
