import { expect, test } from 'vitest'
import type { CautionFacts } from '../../../core/cautions/cautions.ts'
import { cautions } from '../../../core/cautions/cautions.ts'
import { cautionBefore, forbidsWork, refusedWork } from '../../../core/cautions/refused-work.ts'
import { dials } from '../../../core/vocabulary/clock.ts'
import { lineWorks, tasks } from '../../../core/vocabulary/work.ts'

const clock = (dial: CautionFacts['dial']): CautionFacts => ({
  form: 'bracket',
  power: 'spring',
  dial,
  jewelled: false,
  luminous: false,
  mercury: false,
  mains: false,
})

// Trade reference §7, common practice: silvered dials are re-silvered or left alone, never cleaned.
test('cleaning is refused on a silvered dial, re-silvering and repair of it are not', () => {
  expect(refusedWork(clock('silvered'), 'dial-cleaning')).toBe('silvered-dial')
  expect(refusedWork(clock('silvered'), 're-silvering')).toBeNull()
  expect(refusedWork(clock('silvered'), 'dial-repair')).toBeNull()
})

test('of every work on every dial nothing else is refused', () => {
  const refused = [null, ...dials].flatMap(dial =>
    lineWorks.filter(work => refusedWork(clock(dial), work)).map(work => `${dial} ${work}`),
  )
  expect(refused).toEqual(['silvered dial-cleaning'])
})

test('before bench time on a silvered dial, and before work on its clock told in words alone, its caution is to be seen', () => {
  const asked = tasks.filter(task => cautionBefore(clock('silvered'), task))
  expect(asked).toEqual(['dial'])
  expect(cautionBefore(clock('silvered'), null)).toBe('silvered-dial')
  expect([null, ...tasks].filter(task => cautionBefore(clock('painted'), task))).toEqual([])
  expect(cautions.filter(forbidsWork)).toEqual(['silvered-dial'])
})
