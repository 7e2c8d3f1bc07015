import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { type Form, forms } from '../../core/vocabulary/clock.ts'
import { views } from '../../core/vocabulary/intake.ts'
import { Drawing } from '../../renderer/condition/drawings/index.tsx'
import { type PinnedNote, pinNear, pinsOn } from '../../renderer/condition/pins.ts'

const all = Object.keys(forms) as Form[]
const markup = (form: Form, view: (typeof views)[number]) =>
  renderToStaticMarkup(createElement(Drawing, { form, view }))

describe('outline drawings', () => {
  it.each(all)(
    'of a %s show it from four sides, in the ink of the page, with nothing the security policy forbids',
    form => {
      for (const view of views) {
        const drawn = markup(form, view)
        expect(drawn).toContain('stroke="currentColor"')
        expect(drawn.match(/<(path|circle|ellipse)/g)?.length, view).toBeGreaterThan(8)
        expect(drawn, view).not.toMatch(/style=|data:|url\(|NaN|undefined|Infinity/)
        const widths = [...drawn.matchAll(/stroke-width="([\d.]+)"/g)].map(([, width]) => Number(width))
        for (const width of widths) expect(width >= 1.25 && width <= 1.75).toBe(true)
      }
    },
  )

  it('are each form’s own from the front and from the back', () => {
    const outsides = all.flatMap(form => [markup(form, 'front'), markup(form, 'back')])
    expect(new Set(outsides).size).toBe(24)
  })
})

describe('pins', () => {
  const notes: PinnedNote[] = [
    { number: 1, said: 'Case', pins: [{ view: 'front', x: 0.2, y: 0.2 }] },
    {
      number: 2,
      said: 'Dial',
      pins: [
        { view: 'dial', x: 0.5, y: 0.5 },
        { view: 'front', x: 0.3, y: 0.2 },
      ],
    },
  ]

  it('carry the number of their note and their place in it', () => {
    expect(pinsOn(notes, 'front')).toMatchObject([
      { number: 1, index: 0 },
      { number: 2, index: 1 },
    ])
  })

  it('are meant where the nearest is within reach, and not beyond', () => {
    const pins = pinsOn(notes, 'front')
    expect(pinNear(pins, { x: 0.26, y: 0.2 })?.number).toBe(2)
    expect(pinNear(pins, { x: 0.22, y: 0.22 })?.number).toBe(1)
    expect(pinNear(pins, { x: 0.2, y: 0.26 })).toBeUndefined()
    expect(pinNear(pins, { x: 0.7, y: 0.7 })).toBeUndefined()
  })
})
