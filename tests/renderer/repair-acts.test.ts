import { expect, test } from 'vitest'
import type { Stage } from '../../core/standing/stages.ts'
import { en } from '../../core/words/en/index.ts'
import { type ActsOf, actWords, openActs, placeOfAct } from '../../renderer/repair/act-names.ts'

const view = (stage: Stage, next: ActsOf['standing']['next'], dueMinor = 0, writtenOffMinor = 0): ActsOf => ({
  standing: { stage, next },
  money: {
    balance: { due: dueMinor, writtenOff: writtenOffMinor },
    heldMinor: Math.max(-dueMinor, 0),
  },
  comeback: null,
  quoted: {},
  feePaidMinor: 0,
})

test('the plain next act of the standing comes first', () => {
  expect(openActs(view('taken-in', ['write-estimate']))[0]).toBe('write-estimate')
})

test('what is owed is taken before the clock goes', () => {
  const acts = openActs(view('ready', ['hand-over'], 41260))
  expect(acts.slice(0, 2)).toEqual(['pay', 'hand-over'])
})

test('a clock with nothing to pay is handed over at once', () => {
  expect(openActs(view('ready', ['hand-over']))[0]).toBe('hand-over')
})

test('each act is offered once', () => {
  const acts = openActs(view('ready', ['hand-over', 'invoice'], 100))
  expect(new Set(acts).size).toBe(acts.length)
})

test('money is given back only while the shop holds some', () => {
  expect(openActs(view('collected', []))).not.toContain('refund')
  expect(openActs(view('collected', [], -500))).toContain('refund')
})

test('a write-off is taken back only where there is one', () => {
  expect(openActs(view('collected', []))).not.toContain('take-back-write-off')
  expect(openActs(view('collected', [], 0, 500))).toContain('take-back-write-off')
})

test('nothing but money is left to do once the clock is collected', () => {
  expect(openActs(view('collected', []))).toEqual([])
  expect(openActs(view('collected', [], 500))).toEqual(['pay', 'write-off'])
})

test('an owner can be told anything while the clock is in the shop', () => {
  expect(openActs(view('ready', ['invoice']))).toContain('tell-owner')
  expect(openActs(view('on-the-bench', ['work']))).toContain('tell-owner')
  expect(openActs(view('collected', []))).not.toContain('tell-owner')
})

test('whether it is covered is decided again of a comeback alone, while its clock is here', () => {
  const comeback = { ...view('on-the-bench', ['work']), comeback: {} }
  expect(openActs(comeback)).toContain('decide-cover')
  expect(openActs({ ...comeback, comeback: null })).not.toContain('decide-cover')
  expect(openActs({ ...view('collected', []), comeback: {} })).not.toContain('decide-cover')
})

test('bench and shelf acts are done on their own pages, the others on the repair’s', () => {
  expect(placeOfAct('work', '/counter', 2207)).toBe('/bench/2207')
  expect(placeOfAct('decide-run-in', '/counter', 2207)).toBe('/shelf/2207')
  expect(placeOfAct('invoice', '/counter', 2207)).toBe('/counter/2207/invoice')
})

test('every act has its words', () => {
  expect(actWords(en, 'hand-over')).toBe('Hand over')
  expect(actWords(en, 'tell-owner')).toBe('Tell the owner')
})

test('a declined clock with a fee told for its estimate is billed before it is handed over, once', () => {
  const declined = { ...view('declined', ['hand-over', 'invoice']), quoted: { fee: 2500 } }
  expect(openActs(declined).slice(0, 2)).toEqual(['invoice', 'hand-over'])
  expect(openActs({ ...declined, quoted: {} })[0]).toBe('hand-over')
  expect(openActs({ ...declined, feePaidMinor: 2500 })[0]).toBe('hand-over')
  expect(openActs({ ...declined, standing: { stage: 'declined', next: ['hand-over'] } })[0]).toBe('hand-over')
})
