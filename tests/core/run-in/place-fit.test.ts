import { describe, expect, it } from 'vitest'
import { misfits } from '../../../core/run-in/place-fit.ts'
import { type Form, forms } from '../../../core/vocabulary/clock.ts'

const clock = (form: Form, power: 'spring' | 'weight' | 'unknown' = 'spring') => ({
  form,
  power,
})

// Where clocks of a form are usually tested: common practice.
describe('what fits at a place', () => {
  it('a longcase clock belongs on the floor, a cuckoo on a hook, a mantel clock on a shelf', () => {
    expect(misfits(clock('longcase', 'weight'), { kind: 'shelf', weightsHang: true })).toEqual(['floor'])
    expect(misfits(clock('cuckoo', 'weight'), { kind: 'hook', weightsHang: true })).toEqual([])
    expect(misfits(clock('mantel'), { kind: 'hook', weightsHang: null })).toEqual(['stand'])
  })

  it('a test stand holds any form', () => {
    for (const form of Object.keys(forms) as Form[])
      expect(misfits(clock(form), { kind: 'stand', weightsHang: null })).toEqual([])
  })

  it('weights are warned of only where it was said that they cannot hang', () => {
    const floor = { kind: 'floor' as const }
    expect(misfits(clock('longcase', 'weight'), { ...floor, weightsHang: false })).toEqual(['weights'])
    expect(misfits(clock('longcase', 'weight'), { ...floor, weightsHang: null })).toEqual([])
    expect(misfits(clock('longcase', 'unknown'), { ...floor, weightsHang: false })).toEqual([])
  })
})
