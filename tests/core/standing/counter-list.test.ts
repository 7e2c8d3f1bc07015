import { describe, expect, it } from 'vitest'
import {
  type CounterFacts,
  counterGroup,
  counterGroups,
  isLate,
  isUncollected,
} from '../../../core/standing/counter-list.ts'

const today = '2027-03-04'
const facts = (more: Partial<CounterFacts>): CounterFacts => ({
  stage: 'on-the-bench',
  comeback: false,
  covered: false,
  waitingFor: null,
  toSend: false,
  partsIn: false,
  estimatedOn: null,
  ...more,
})
const group = (more: Partial<CounterFacts>) => counterGroup(facts(more), today)

describe('the counter’s list', () => {
  it('puts a comeback at the head of the queue until it is ready', () => {
    expect(group({ comeback: true, stage: 'waiting', waitingFor: 'owner' })).toBe('comeback')
    expect(group({ comeback: true, stage: 'ready' })).toBe('to-collect')
  })

  it('reads from what is most urgent to the owner waiting', () => {
    expect(counterGroups).toEqual([
      'comeback',
      'to-collect',
      'awaiting-word',
      'to-send',
      'late',
      'parts-in',
      'to-estimate',
      'in-hand',
    ])
  })

  it('asks for the owner’s word wherever a repair waits for it', () => {
    expect(group({ stage: 'estimate-out' })).toBe('awaiting-word')
    expect(group({ stage: 'waiting', waitingFor: 'owner' })).toBe('awaiting-word')
    expect(group({ stage: 'waiting', waitingFor: 'parts' })).toBe('in-hand')
  })

  it('awaits no word on an estimate that was not sent', () => {
    expect(group({ stage: 'taken-in', toSend: true })).toBe('to-send')
    expect(group({ stage: 'waiting', waitingFor: 'owner', toSend: true })).toBe('to-send')
    expect(group({ stage: 'taken-in' })).toBe('to-estimate')
  })

  it('tells apart those whose parts are in, unless they are late already', () => {
    const waiting = { stage: 'waiting', waitingFor: 'parts', partsIn: true } as const
    expect(group(waiting)).toBe('parts-in')
    expect(group({ ...waiting, estimatedOn: '2027-03-03' })).toBe('late')
  })

  it('returns a declined clock with those to be collected', () => {
    expect(group({ stage: 'declined' })).toBe('to-collect')
  })

  it('calls a repair late the day after its estimated date, and never one that is ready', () => {
    expect(isLate({ stage: 'on-the-bench', estimatedOn: today }, today)).toBe(false)
    expect(isLate({ stage: 'on-the-bench', estimatedOn: '2027-03-03' }, today)).toBe(true)
    expect(isLate({ stage: 'ready', estimatedOn: '2027-03-03' }, today)).toBe(false)
    expect(group({ estimatedOn: '2027-03-03' })).toBe('late')
  })

  it('calls a clock uncollected when it has stood ready longer than the shop’s period', () => {
    expect(isUncollected('ready', '2027-01-01', '2027-03-02', 60)).toBe(false)
    expect(isUncollected('ready', '2027-01-01', '2027-03-03', 60)).toBe(true)
    expect(isUncollected('running-in', '2026-01-01', '2027-03-03', 60)).toBe(false)
  })
})
