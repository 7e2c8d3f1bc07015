import { describe, expect, it } from 'vitest'
import { type CautionFacts, cautions, cautionsFor, mustAcknowledge } from '../../../core/cautions/cautions.ts'
import { en } from '../../../core/words/en/index.ts'

const plain: CautionFacts = {
  form: 'mantel',
  power: 'electric-rewind',
  dial: 'brass',
  jewelled: false,
  luminous: false,
  mercury: false,
  mains: false,
}
const raised = (more: Partial<CautionFacts>) => cautionsFor({ ...plain, ...more })

// The rules are those of the trade reference, intake and cautions: common practice, with the published pages named in docs/sources.md.
describe('cautions', () => {
  it('follow from what is recorded, and only from that', () => {
    expect(raised({})).toEqual([])
    expect(raised({ dial: 'silvered' })).toEqual(['silvered-dial'])
    expect(raised({ dial: 'porcelain' })).toEqual(['enamel-dial'])
    expect(raised({ jewelled: true })).toEqual(['jewels'])
    expect(raised({ power: 'fusee' })).toEqual(['spring-power'])
    expect(raised({ luminous: true, mercury: true })).toEqual(['luminous', 'mercury'])
    expect(raised({ power: 'mains' })).toEqual(['mains'])
    expect(raised({ form: 'longcase', power: 'weight' })).toEqual(['lead-weights', 'tall-case'])
    expect(raised({ form: 'torsion' })).toEqual(['dome'])
    expect(raised({ form: 'skeleton' })).toEqual(['dome'])
    expect(raised({ form: 'cuckoo', power: 'weight' })).toEqual([])
  })

  it('must be acknowledged where someone can be hurt', () => {
    const harmful = cautions.filter(mustAcknowledge)
    expect(harmful).toEqual(['spring-power', 'lead-weights', 'tall-case', 'luminous', 'mercury', 'mains'])
  })

  it('of a silvered dial says to leave it or re-silver it, never to clean it', () => {
    expect(en.cautions['silvered-dial']).toMatch(/never clean/)
  })
})
