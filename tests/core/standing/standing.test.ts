import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Stage, stages } from '../../../core/standing/stages.ts'
import { type RepairAct, type RepairFacts, repairStanding } from '../../../core/standing/standing.ts'

const fresh: RepairFacts = {
  covered: false,
  estimateOnly: false,
  estimateWritten: false,
  estimateSent: false,
  word: null,
  findingOpen: false,
  findingPriced: false,
  workBegun: false,
  labourRunning: false,
  waitsOpen: [],
  runIn: 'none',
  readyAt: null,
  collectedAt: null,
  invoiced: false,
}
const at = '2027-03-01T09:00:00.000Z'
const agreed: RepairFacts = { ...fresh, estimateWritten: true, estimateSent: true, word: 'go-ahead' }
const standing = (facts: Partial<RepairFacts>, from = fresh) => repairStanding({ ...from, ...facts })

/** Facts in any combination, also ones the books would never let come together. */
const anyFacts: fc.Arbitrary<RepairFacts> = fc.record({
  covered: fc.boolean(),
  estimateOnly: fc.boolean(),
  estimateWritten: fc.boolean(),
  estimateSent: fc.boolean(),
  word: fc.constantFrom(null, 'go-ahead' as const, 'declined' as const),
  findingOpen: fc.boolean(),
  findingPriced: fc.boolean(),
  workBegun: fc.boolean(),
  labourRunning: fc.boolean(),
  waitsOpen: fc.uniqueArray(fc.constantFrom('parts', 'outside-work', 'owner', 'other' as const)),
  runIn: fc.constantFrom('none', 'running', 'passed', 'to-bench' as const),
  readyAt: fc.constantFrom(null, at),
  collectedAt: fc.constantFrom(null, at),
  invoiced: fc.boolean(),
})

describe('the standing of a repair', () => {
  it('goes through the job in order, and the wheel fills as it goes', () => {
    const job: [Partial<RepairFacts>, Stage][] = [
      [{}, 'taken-in'],
      [{ estimateWritten: true }, 'taken-in'],
      [{ estimateSent: true }, 'estimate-out'],
      [{ word: 'go-ahead' }, 'go-ahead'],
      [{ workBegun: true }, 'on-the-bench'],
      [{ waitsOpen: ['parts'] }, 'waiting'],
      [{ waitsOpen: [], runIn: 'running' }, 'running-in'],
      [{ runIn: 'passed', readyAt: at }, 'ready'],
      [{ invoiced: true }, 'ready'],
      [{ collectedAt: at }, 'collected'],
    ]
    let facts = fresh
    let notches = 0
    for (const [more, stage] of job) {
      facts = { ...facts, ...more }
      const now = repairStanding(facts)
      expect(now.stage).toBe(stage)
      expect(now.notches).toBeGreaterThanOrEqual(notches)
      notches = now.notches
    }
    expect(notches).toBe(8)
  })

  it('puts the plain next act first', () => {
    const firsts: [Partial<RepairFacts>, string][] = [
      [{}, 'write-estimate'],
      [{ estimateWritten: true }, 'send-estimate'],
      [{ estimateWritten: true, estimateSent: true }, 'record-word'],
      [agreed, 'work'],
      [{ ...agreed, runIn: 'running', workBegun: true }, 'decide-run-in'],
      [{ ...agreed, readyAt: at }, 'invoice'],
      [{ ...agreed, readyAt: at, invoiced: true }, 'hand-over'],
      [{ ...agreed, word: 'declined' }, 'hand-over'],
    ]
    for (const [facts, act] of firsts) expect(standing(facts).next[0]).toBe(act)
  })

  it('lets no work be done before the go-ahead, except on a comeback the warranty covers', () => {
    expect(standing({}).blocked).toContainEqual({ act: 'work', code: 'standing.noGoAhead' })
    expect(standing({ covered: true }).next).toContain('work')
  })

  it('tells a written estimate from one that was sent, as long as it is the owner’s word that is needed', () => {
    expect(standing({ estimateWritten: true })).toMatchObject({ stage: 'taken-in', toSend: true })
    expect(standing({ estimateWritten: true, estimateSent: true }).toSend).toBe(false)
    const supplement = { ...agreed, estimateSent: false, workBegun: true }
    expect(standing(supplement)).toMatchObject({ stage: 'on-the-bench', toSend: false })
    const asked = standing({ ...supplement, findingOpen: true, findingPriced: true })
    expect(asked).toMatchObject({ stage: 'waiting', waitingFor: 'owner', toSend: true })
    expect(asked.next[0]).toBe('send-estimate')
  })

  it('waits for the owner when a finding needs a word, whatever else it waits for', () => {
    const now = standing({ workBegun: true, findingOpen: true, waitsOpen: ['parts'] }, agreed)
    expect(now).toMatchObject({ stage: 'waiting', waitingFor: 'owner' })
  })

  it('asks for a supplement next while what was found has no price, and for the word once it has', () => {
    const found = { workBegun: true, findingOpen: true }
    expect(standing(found, agreed).next[0]).toBe('write-estimate')
    expect(standing({ ...found, findingPriced: true }, agreed).next[0]).toBe('record-word')
  })

  it('starts no run-in while the labour clock runs, while it waits, or before any work', () => {
    const code = (facts: Partial<RepairFacts>) =>
      standing(facts, { ...agreed, workBegun: true }).blocked.find(b => b.act === 'start-run-in')?.code
    expect(code({ labourRunning: true })).toBe('standing.labourRunning')
    expect(code({ waitsOpen: ['parts'] })).toBe('standing.stillWaiting')
    expect(code({ workBegun: false })).toBe('standing.noWork')
    expect(code({})).toBeUndefined()
  })

  it('hands nothing over before its invoice, but a covered comeback, an estimate only and a declined clock', () => {
    const may = (facts: Partial<RepairFacts>) =>
      standing({ readyAt: at, ...facts }, agreed).next.includes('hand-over')
    expect(may({})).toBe(false)
    for (const facts of [
      { invoiced: true },
      { covered: true },
      { estimateOnly: true },
      { word: 'declined' as const },
    ])
      expect(may(facts)).toBe(true)
  })

  it('takes a ready clock back to the bench, where it may run in again', () => {
    expect(standing({ readyAt: at, runIn: 'passed', workBegun: true }, agreed).next).toContain(
      'back-to-bench',
    )
    const back = standing({ readyAt: null, runIn: 'passed', workBegun: true }, agreed)
    expect(back.stage).toBe('on-the-bench')
    expect(back.next).toContain('start-run-in')
  })

  it('answers for every act, either open or blocked with a reason, whatever is on record', () => {
    fc.assert(
      fc.property(anyFacts, facts => {
        const { next, blocked, stage, notches } = repairStanding(facts)
        expect(new Set([...next, ...blocked.map(b => b.act)]).size).toBe(next.length + blocked.length)
        expect(next.length + blocked.length).toBe(11)
        expect(notches).toBe(stages[stage].notches)
      }),
    )
  })

  it('allows nothing more once the clock is collected', () => {
    fc.assert(
      fc.property(anyFacts, facts => {
        const { stage, next } = repairStanding({ ...facts, collectedAt: at })
        expect({ stage, next }).toEqual({ stage: 'collected', next: [] })
      }),
    )
  })
})

describe('what blocks an act', () => {
  const worked = { ...agreed, workBegun: true }
  const ready = { ...worked, readyAt: at }
  const runningIn = { ...worked, runIn: 'running' } as const

  it.each<[RepairAct, string, Partial<RepairFacts>]>([
    ['record-word', 'standing.noEstimateSent', { estimateWritten: true }],
    ['send-estimate', 'standing.noEstimateWritten', {}],
    ['send-estimate', 'standing.noEstimateWritten', { estimateWritten: true, estimateSent: true }],
    ['write-estimate', 'standing.alreadyReady', ready],
    ['end-wait', 'standing.notWaiting', worked],
    ['work', 'standing.noGoAhead', {}],
    ['work', 'standing.runningIn', runningIn],
    ['work', 'standing.alreadyReady', ready],
    ['start-run-in', 'standing.noGoAhead', {}],
    ['start-run-in', 'standing.noWork', agreed],
    ['start-run-in', 'standing.alreadyReady', ready],
    ['start-run-in', 'standing.runningIn', runningIn],
    ['decide-run-in', 'standing.notRunningIn', worked],
    ['declare-ready', 'standing.noGoAhead', {}],
    ['declare-ready', 'standing.alreadyReady', ready],
    ['declare-ready', 'standing.runningIn', runningIn],
    ['declare-ready', 'standing.labourRunning', { ...worked, labourRunning: true }],
    ['declare-ready', 'standing.stillWaiting', { ...worked, waitsOpen: ['parts'] }],
    ['back-to-bench', 'standing.notReady', worked],
    ['invoice', 'standing.notReady', worked],
    ['invoice', 'standing.invoiced', { ...ready, invoiced: true }],
    ['hand-over', 'standing.notReady', worked],
    ['hand-over', 'standing.notInvoiced', ready],
    ['hand-over', 'standing.collected', { ...ready, collectedAt: at }],
  ])('%s: %s', (act, code, facts) => {
    expect(standing(facts).blocked).toContainEqual({ act, code })
  })

  it('is nothing once what it waits for is there', () => {
    const open: [RepairAct, Partial<RepairFacts>][] = [
      ['record-word', { estimateWritten: true, estimateSent: true }],
      ['send-estimate', { estimateWritten: true }],
      ['write-estimate', { ...agreed, word: 'declined' }],
      ['end-wait', { ...worked, waitsOpen: ['other'] }],
      ['work', agreed],
      ['start-run-in', worked],
      ['decide-run-in', runningIn],
      ['declare-ready', agreed],
      ['declare-ready', { estimateOnly: true }],
      ['back-to-bench', ready],
      ['invoice', ready],
      ['hand-over', { ...ready, invoiced: true }],
    ]
    for (const [act, facts] of open) expect(standing(facts).next, act).toContain(act)
  })
})

describe('what a repair waits for', () => {
  it('is the owner before outside work, that before parts, and these before anything else', () => {
    const all = ['other', 'parts', 'outside-work', 'owner'] as const
    const waits = all.map((_, i) => standing({ waitsOpen: all.slice(0, i + 1) }, agreed).waitingFor)
    expect(waits).toEqual(['other', 'parts', 'outside-work', 'owner'])
  })

  it('is nothing before the go-ahead: no wait and no work makes it further than it is', () => {
    expect(standing({ waitsOpen: ['parts'], workBegun: true })).toMatchObject({
      stage: 'taken-in',
      waitingFor: null,
    })
  })

  it('is not the sending of an estimate that is not written, or was sent', () => {
    const found = { ...agreed, findingOpen: true }
    expect(standing({}).toSend).toBe(false)
    expect(standing(found)).toMatchObject({ waitingFor: 'owner', toSend: false })
    expect(standing({ ...found, estimateWritten: false, estimateSent: false }).toSend).toBe(false)
  })
})

it('leads with the acts of its stage, in their order', () => {
  const leads: [Partial<RepairFacts>, string[]][] = [
    [{ estimateWritten: true }, ['send-estimate', 'write-estimate']],
    [{ ...agreed, workBegun: true }, ['work', 'start-run-in']],
    [{ ...agreed, waitsOpen: ['parts'] }, ['record-word', 'end-wait']],
    [{ ...agreed, estimateSent: false, waitsOpen: ['owner'] }, ['send-estimate', 'end-wait']],
    [{ estimateSent: true, findingOpen: true }, ['record-word']],
  ]
  for (const [facts, acts] of leads) expect(standing(facts).next.slice(0, acts.length)).toEqual(acts)
})
