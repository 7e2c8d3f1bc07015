import fc from 'fast-check'
import { expect, test } from 'vitest'
import { calculations } from '../../electron/commands/calc/index.ts'
import { refused } from './calc.ts'

/** The problems as `code field`, in this process: the same path the command takes after reading its input. */
async function problemsOf(name: string, raw: unknown): Promise<string[]> {
  const load = calculations[name]
  if (!load) throw new Error(`no calculation ${name}`)
  const result = (await load()).default.calculate(raw)
  return result.ok ? [] : result.problems.map(({ code, field }) => `${code} ${field}`).sort()
}

test('a name that is none, no JSON and a list instead of an object are refused', () => {
  expect(refused('prices', '{}')).toEqual(['calc.unknownName '])
  expect(refused('toString', '{}')).toEqual(['calc.unknownName '])
  expect(refused('price', '{"currency": NaN}')).toEqual(['shape.notJson '])
  expect(refused('price', '')).toEqual(['shape.notJson '])
  expect(refused('price', '[]')).toEqual(['shape.wrongType '])
})

test('every problem of a document is named at once: shapes, unknown fields and figures together', () => {
  const input = {
    currency: 'EUR',
    tax: { basis: 'group', mode: 'up', inclusive: 'no' },
    lines: [
      { kind: 'labour', unit: '-60', colour: 'red', taxes: [{ code: 'S', rate: '2e1' }] },
      { kind: 'gift', quantity: '1,5', unit: 60, taxes: {} },
      'a line',
    ],
    paid: '0.001',
    due: '5',
  }
  expect(refused('price', JSON.stringify(input))).toEqual([
    'money.tooPrecise paid',
    'number.notADecimal lines[0].taxes[0].rate',
    'number.notADecimal lines[1].quantity',
    'price.negativeUnit lines[0].unit',
    'shape.missing lines[0].quantity',
    'shape.notOneOf lines[1].kind',
    'shape.notOneOf tax.mode',
    'shape.unknownField due',
    'shape.unknownField lines[0].colour',
    'shape.wrongType lines[1].taxes',
    'shape.wrongType lines[1].unit',
    'shape.wrongType lines[2]',
    'shape.wrongType tax.inclusive',
  ])
})

test.each([
  'NaN',
  'Infinity',
  '-Infinity',
  '1e3',
  '1E3',
  '1,000',
  '1_000',
  ' 1',
  '',
  '0x10',
  '1.',
  '.1',
  '١',
])('money written as %j is refused', async text => {
  expect(await problemsOf('allocate', { currency: 'EUR', total: text, weights: [1] })).toEqual([
    'money.notADecimal total',
  ])
})

test('a number too large for JSON’s reader is a problem, not infinity', () => {
  expect(refused('line-fit', '{"x":[1,1e999],"y":[1,2]}')).toEqual(['fit.notFinite x[1]'])
  expect(refused('pendulum', '{"bph":1e999,"g":9.8}')).toEqual(['number.outOfRange bph'])
  expect(
    refused(
      'warranty',
      '{"start":"2026-01-01","length":1e999,"unit":"months","convention":"same-date","on":"2026-01-01"}',
    ),
  ).toEqual(['warranty.length length'])
})

const week = [{ day: 1, from: '09:00', to: '17:00' }]
const policy = { stages: [{ name: 'test', days: 1 }], readingEveryDays: 1 }

test.each<[string, unknown, string[]]>([
  [
    'worktime',
    { week: [], holidays: [], from: '2026-01-01T09:00', minutes: -1 },
    ['calendar.closedAllWeek week', 'calendar.minutes minutes'],
  ],
  [
    'worktime',
    { week, holidays: ['2026-02-29'], from: '2026-01-01 09:00', minutes: 1 },
    ['date.notADate holidays[0]', 'date.notALocalTime from'],
  ],
  ['train', { wheels: [], pinions: [], escape: 30 }, ['train.empty wheels']],
  [
    'train',
    { wheels: [80], pinions: [0], escape: 30.5 },
    ['number.notWhole escape', 'number.outOfRange pinions[0]'],
  ],
  ['mainspring', { barrelMm: 10, arborMm: 12, thicknessMm: 0.3 }, ['mainspring.arbor arborMm']],
  ['pendulum', {}, ['pendulum.oneOf bph', 'pendulum.oneOf g']],
  [
    'strike',
    { pattern: 'hours', from: '2026-01-02T00:00', to: '2026-01-01T00:00' },
    ['strike.endsBeforeItBegins to'],
  ],
  [
    'strike',
    { pattern: 'westerly', from: '2026-01-02T00:00', to: '2026-01-32T00:00' },
    ['date.notALocalTime to', 'shape.notOneOf pattern'],
  ],
  [
    'run-in',
    {
      duration: '8-day',
      trains: 4,
      start: '2026-01-01T09:00',
      week,
      holidays: [],
      policy: { ...policy, stages: [] },
    },
    ['runIn.noStage policy.stages', 'runIn.trains trains'],
  ],
  [
    'rate',
    {
      readings: [
        { at: '2026-01-02T00:00:00Z', errorSeconds: 1 },
        { at: '2026-01-01T00:00:00Z', errorSeconds: '1' },
      ],
    },
    ['shape.wrongType readings[1].errorSeconds'],
  ],
  [
    'rate',
    {
      readings: [
        { at: '2026-01-02T00:00:00Z', errorSeconds: 1 },
        { at: '2026-01-01T00:00:00Z', errorSeconds: 1, wound: null },
      ],
    },
    ['shape.wrongType readings[1].wound'],
  ],
  [
    'rate',
    {
      readings: [
        { at: '2026-01-02T00:00:00Z', errorSeconds: 1 },
        { at: '2026-01-02T00:00:00Z', errorSeconds: 1 },
      ],
    },
    ['rate.sameTime readings[1].at'],
  ],
])('%s refuses %j', async (name, input, problems) => {
  expect(await problemsOf(name, input)).toEqual(problems)
})

test('whatever JSON of other shape is given, every calculation names problems and never breaks', async () => {
  const json = fc.json().map(text => JSON.parse(text) as unknown)
  for (const name of Object.keys(calculations))
    await fc.assert(
      fc.asyncProperty(json, async raw => {
        expect((await problemsOf(name, raw)).length).toBeGreaterThan(0)
      }),
    )
})

/** A good input of each calculation with one value anywhere replaced by something else. */
const good: Readonly<Record<string, unknown>> = {
  price: {
    currency: 'EUR',
    tax: { basis: 'line', mode: 'down', inclusive: true, aggregate: true },
    lines: [
      {
        kind: 'fee',
        quantity: '1',
        unit: '5',
        per: '1',
        unitDiscount: '0',
        allowance: '0',
        charge: '0',
        taxes: [{ code: 'S', rate: '5' }],
      },
    ],
    allowances: [{ amount: '1', taxes: [] }],
    paid: '0',
    rounding: '0',
  },
  allocate: { currency: 'EUR', total: '5', weights: [1, 2] },
  warranty: {
    start: '2026-01-01',
    length: 12,
    unit: 'months',
    convention: 'same-date',
    pausedDays: 0,
    on: '2026-01-01',
  },
  worktime: { week, holidays: ['2026-01-05'], from: '2026-01-01T09:00', minutes: 10 },
  'line-fit': { x: [1, 2], y: [3, 4] },
  rate: {
    readings: [
      { at: '2026-01-01T00:00:00Z', errorSeconds: 1 },
      { at: '2026-01-02T00:00:00Z', errorSeconds: 1, nutTurns: 1 },
    ],
  },
  pendulum: { bph: 3600, latitude: 50, heightMetres: 5 },
  train: { wheels: [80, 75], pinions: [10, 10], escape: 30 },
  mainspring: { barrelMm: 45, arborMm: 15, thicknessMm: 0.45 },
  strike: { pattern: 'hours', from: '2026-01-01T00:00', to: '2026-01-01T00:00' },
  verdict: {
    clock: {
      kind: 'bracket',
      power: 'spring',
      escapement: 'recoil',
      durationDays: 8,
      trains: 3,
      strike: 'hours-half',
      chime: true,
      chimeCorrects: true,
    },
    policy: { ...policy, limits: { perDay: 30, steady: 10 } },
    log: [
      { at: '2026-01-01T00:00:00Z', leftSeconds: 0, wound: true },
      {
        at: '2026-01-02T00:00:00Z',
        errorSeconds: 5,
        hour: { shown: 12, counted: 12 },
        half: 1,
        quarter: { which: 4, right: true },
        selfCorrected: true,
        inBeat: true,
        event: 'cased',
        nutTurns: 0.5,
        stopped: false,
      },
    ],
    now: '2026-01-02T00:00:00Z',
  },
  'run-in': { duration: '8-day', trains: 1, start: '2026-01-01T09:00', week, holidays: [], policy },
}

/** Every path to a value in `value`. */
function paths(value: unknown): string[][] {
  if (typeof value !== 'object' || value === null) return [[]]
  return [[], ...Object.entries(value).flatMap(([key, inner]) => paths(inner).map(path => [key, ...path]))]
}

function replaced(value: unknown, [key, ...rest]: readonly string[], by: unknown): unknown {
  if (key === undefined) return by
  const copy: unknown = Array.isArray(value) ? [...value] : { ...(value as object) }
  ;(copy as Record<string, unknown>)[key] = replaced((value as Record<string, unknown>)[key], rest, by)
  return copy
}

test.each(Object.keys(calculations))(
  '%s with any one value spoilt answers or names problems at once and never breaks',
  async name => {
    expect(await problemsOf(name, good[name])).toEqual([])
    const spoilt = fc.constantFrom<unknown>(
      null,
      '',
      'x',
      '-1',
      '1e9',
      -1,
      0,
      0.5,
      1e300,
      Number.MAX_SAFE_INTEGER,
      Number.POSITIVE_INFINITY,
      true,
      [],
      {},
      '9999-12-31',
      '9999-12-31T23:59',
      '9999-12-31T23:59:59Z',
      '99999999999999999999999999999999999999',
    )
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...paths(good[name])), spoilt, async (path, by) => {
        expect(Array.isArray(await problemsOf(name, replaced(good[name], path, by)))).toBe(true)
      }),
      { numRuns: 300 },
    )
  },
)
