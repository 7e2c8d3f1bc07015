import { describe, expect, test } from 'vitest'
import {
  awaitsWord,
  isBeforeShelf,
  isInShop,
  isInWork,
  isToCollect,
  isUnfinished,
  isWithoutOrder,
  isWithoutWork,
  stages,
  stagesThat,
  takesEstimate,
} from '../../../core/standing/stages.ts'

const all = Object.keys(stages)

describe('the stages of a repair', () => {
  test('each has passed so many of the eight notches of the count wheel', () => {
    expect(Object.entries(stages).map(([stage, { notches }]) => [stage, notches])).toEqual([
      ['taken-in', 1],
      ['estimate-out', 2],
      ['go-ahead', 3],
      ['on-the-bench', 4],
      ['waiting', 4],
      ['running-in', 6],
      ['ready', 7],
      ['declined', 7],
      ['collected', 8],
    ])
  })

  test('a clock is in the shop until it is collected', () => {
    expect(stagesThat(isInShop)).toEqual(all.filter(stage => stage !== 'collected'))
  })

  test('it may be collected when it is ready, or declined', () => {
    expect(stagesThat(isToCollect)).toEqual(['ready', 'declined'])
  })

  test('until then the shop has something to do on it', () => {
    expect(stagesThat(isUnfinished)).toEqual([
      'taken-in',
      'estimate-out',
      'go-ahead',
      'on-the-bench',
      'waiting',
      'running-in',
    ])
  })

  test('it is in work from the go-ahead until it is ready', () => {
    expect(stagesThat(isInWork)).toEqual(['go-ahead', 'on-the-bench', 'waiting', 'running-in'])
  })

  test('its work lies ahead until it runs in', () => {
    expect(stagesThat(isBeforeShelf)).toEqual([
      'taken-in',
      'estimate-out',
      'go-ahead',
      'on-the-bench',
      'waiting',
    ])
  })

  test('an estimate can be written until it is ready, and again once it was declined', () => {
    expect(stagesThat(takesEstimate)).toEqual(all.filter(stage => stage !== 'ready' && stage !== 'collected'))
  })
})

describe('what a repair waits for', () => {
  const repair = { stage: 'waiting', waitingFor: 'owner', toSend: false } as const

  test('the owner’s word is awaited once the estimate is out, or while it waits for the owner', () => {
    expect(awaitsWord(repair)).toBe(true)
    expect(awaitsWord({ ...repair, waitingFor: 'parts' })).toBe(false)
    expect(awaitsWord({ stage: 'estimate-out', waitingFor: null, toSend: false })).toBe(true)
    expect(awaitsWord({ stage: 'taken-in', waitingFor: null, toSend: false })).toBe(false)
  })

  test('not before the owner was asked', () => {
    expect(awaitsWord({ ...repair, toSend: true })).toBe(false)
    expect(awaitsWord({ stage: 'estimate-out', waitingFor: null, toSend: true })).toBe(false)
  })
})

describe('what was agreed to', () => {
  const plain = { stage: 'ready', estimateOnly: false, covered: false } as const

  test('a clock goes home without work when it was declined, or came for an estimate alone', () => {
    expect(isWithoutWork(plain)).toBe(false)
    expect(isWithoutWork({ ...plain, stage: 'declined' })).toBe(true)
    expect(isWithoutWork({ ...plain, estimateOnly: true })).toBe(true)
  })

  test('nothing was to be agreed to without work, and on a covered comeback', () => {
    expect(isWithoutOrder(plain)).toBe(false)
    expect(isWithoutOrder({ ...plain, covered: true })).toBe(true)
    expect(isWithoutOrder({ ...plain, stage: 'declined' })).toBe(true)
    expect(isWithoutOrder({ ...plain, estimateOnly: true })).toBe(true)
  })
})
