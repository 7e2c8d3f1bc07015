import { describe, expect, it } from 'vitest'
import { type NoteFacts, sinceBefore } from '../../../core/condition/compare.ts'

const note = (component: string, grade: string, more: Partial<NoteFacts> = {}): NoteFacts => ({
  component,
  finish: '',
  grade,
  earlierRepair: '',
  remark: '',
  struckReason: null,
  ...more,
})

describe('a condition note beside the last visit’s', () => {
  it('is as last time where one then said the same, however it was spaced and capitalised', () => {
    const before = [note('dial', 'marked', { remark: 'Scratch  at four' })]
    expect(sinceBefore([note('dial', 'marked', { remark: 'scratch at four ' })], before)).toEqual(['same'])
  })

  it('is noted otherwise where one then spoke of the same component, new where none did', () => {
    const before = [note('dial', 'marked')]
    expect(sinceBefore([note('dial', 'damaged'), note('case', 'worn')], before)).toEqual(['changed', 'new'])
  })

  it('has one earlier note to itself: a second scratch is new', () => {
    const before = [note('dial', 'marked', { remark: 'Scratch at four' })]
    const now = [
      note('dial', 'marked', { remark: 'Scratch at nine' }),
      note('dial', 'marked', { remark: 'Scratch at four' }),
    ]
    expect(sinceBefore(now, before)).toEqual(['new', 'same'])
  })

  it('says nothing where it is struck out, and one struck out then answers for none', () => {
    const struck = note('dial', 'marked', { struckReason: 'It was dust' })
    expect(sinceBefore([struck], [])).toEqual([null])
    expect(sinceBefore([note('dial', 'marked')], [struck])).toEqual(['new'])
  })
})
