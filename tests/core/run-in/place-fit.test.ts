import { describe, expect, it } from 'vitest'
import { type ClockToPlace, misfits, type PlaceRoom } from '../../../core/run-in/place-fit.ts'
import { type Form, forms } from '../../../core/vocabulary/clock.ts'
import type { PlaceKind } from '../../../core/vocabulary/work.ts'

const unmeasured = { heightMm: null, widthMm: null, depthMm: null }

const clock = (form: Form, power: 'spring' | 'weight' | 'unknown' = 'spring', size = {}): ClockToPlace => ({
  form,
  power,
  ...unmeasured,
  weightG: null,
  ...size,
})

const place = (kind: PlaceKind, room: Partial<PlaceRoom> = {}): PlaceRoom => ({
  kind,
  weightsHang: null,
  ...unmeasured,
  bearsG: null,
  ...room,
})

// Where clocks of a form are usually tested: common practice.
describe('what fits at a place', () => {
  it('a longcase clock belongs on the floor, a cuckoo on a hook, a mantel clock on a shelf', () => {
    expect(misfits(clock('longcase', 'weight'), place('shelf', { weightsHang: true }))).toEqual(['floor'])
    expect(misfits(clock('cuckoo', 'weight'), place('hook', { weightsHang: true }))).toEqual([])
    expect(misfits(clock('mantel'), place('hook'))).toEqual(['stand'])
  })

  it('a test stand holds any form', () => {
    for (const form of Object.keys(forms) as Form[]) expect(misfits(clock(form), place('stand'))).toEqual([])
  })

  it('weights are warned of only where it was said that they cannot hang', () => {
    expect(misfits(clock('longcase', 'weight'), place('floor', { weightsHang: false }))).toEqual(['weights'])
    expect(misfits(clock('longcase', 'weight'), place('floor'))).toEqual([])
    expect(misfits(clock('longcase', 'unknown'), place('floor', { weightsHang: false }))).toEqual([])
  })

  it('a clock that passes the room or the load of a place is told on each side that it passes', () => {
    const large = clock('mantel', 'spring', { heightMm: 401, widthMm: 350, depthMm: 200, weightG: 12_001 })
    const shelf = place('shelf', { heightMm: 400, widthMm: 350, depthMm: 199, bearsG: 12_000 })
    expect(misfits(large, shelf)).toEqual(['heightMm', 'depthMm', 'load'])
  })

  it('what nobody measured, of the clock or of the place, speaks against nothing', () => {
    const large = { heightMm: 4000, widthMm: 4000, depthMm: 4000, weightG: 90_000 }
    expect(misfits(clock('mantel', 'spring', large), place('shelf'))).toEqual([])
    expect(misfits(clock('mantel'), place('shelf', { heightMm: 1, bearsG: 1 }))).toEqual([])
  })
})
