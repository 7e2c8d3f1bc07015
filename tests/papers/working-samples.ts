import { minor } from '../../core/money/minor.ts'
import type {
  BenchCardContents,
  CertificateReading,
  ConditionReportContents,
  GoAheadContents,
  HandOverContents,
  ReadyLetterContents,
  RepairTop,
  RunInContents,
  StatementContents,
  TagsContents,
  UncollectedLetterContents,
  WorkingContents,
} from '../../core/papers/working.ts'
import { shelfVerdict } from '../../core/run-in/verdict.ts'
import { claimCheck, estimate, head, supplement } from './samples.ts'

const { number: _, clock, ...rest } = head
if (!clock) throw new Error('the sample head has a clock')

/** What every sample about a repair carries. */
const top: RepairTop = { ...rest, clock, repairNumber: '2231' }

const held = claimCheck.belongings.filter(({ custody }) => custody === 'received')

export const tags: TagsContents = {
  ...top,
  kind: 'tags',
  tags: [{}, ...held.map(({ custody: _kept, tag = '', ...thing }) => ({ part: { ...thing, tag } }))],
  qr: 'countwheel:2231',
}

export const conditionReport: ConditionReportContents = {
  ...top,
  kind: 'condition-report',
  takenInOn: '2027-03-03',
  fault: claimCheck.fault,
  springs: 'partly',
  notes: [
    {
      component: 'dial',
      finish: 'silver-coloured',
      grade: 'marked',
      remark: 'Worn through at the five, old lacquer crazed.',
      notedOn: '2027-03-03',
      pins: [
        { view: 'dial', x: 0.4, y: 0.3 },
        { view: 'front', x: 0.5, y: 0.35 },
      ],
    },
    {
      component: 'case',
      grade: 'worn',
      earlierRepair: 'glue',
      remark: 'Lifting veneer at the left foot.',
      notedOn: '2027-03-03',
      pins: [{ view: 'front', x: 0.2, y: 0.95 }],
    },
    { component: 'glass', grade: 'sound', notedOn: '2027-03-03', pins: [] },
  ],
  photographs: [],
  signedIn: { name: 'Rosamund Pell', at: '2027-03-03T10:12:00.000Z' },
}

const { kind: _kind, number: estimateNumber, ...estimated } = estimate
export const goAhead: GoAheadContents = {
  ...estimated,
  kind: 'go-ahead',
  estimate: { number: estimateNumber, issuedOn: '2027-03-03' },
}

const { kind: _again, number: supplementNumber, ...supplemented } = supplement
export const goAheadSupplement: GoAheadContents = {
  ...supplemented,
  kind: 'go-ahead',
  estimate: { number: supplementNumber, issuedOn: '2027-03-03' },
}

export const benchCard: BenchCardContents = {
  ...top,
  kind: 'bench-card',
  fault: claimCheck.fault,
  scope: 'overhaul',
  comebackOf: '1988',
  estimatedOn: '2027-05-21',
  most: minor(95000),
  cautions: ['silvered-dial', 'spring-power'],
  agreed: ['Strip, clean and inspect all three trains', 'Re-silvering the dial and the chapter ring'],
  steps: [
    { code: 'as-found', cautions: [] },
    { code: 'let-down', cautions: ['spring-power'] },
    { code: 'strip', cautions: [] },
    { code: 'hands-by-trip', cautions: [] },
  ],
  asFound: [{ mark: 'chime-barrel', text: 'Pin six under the second hammer tail.' }],
  belongings: claimCheck.belongings,
  findings: [
    {
      component: 'movement',
      text: 'Third wheel, upper pivot cut through.',
      needsWord: true,
      on: '2027-03-02',
    },
  ],
  qr: 'countwheel:2231',
}

const dayMs = 86_400_000
const startMs = Date.parse('2027-03-04T09:00:00.000Z')

/** A reading so many days after the start. */
const reading = (
  day: number,
  errorSeconds: number,
  more: Partial<CertificateReading> = {},
): CertificateReading => ({
  at: new Date(startMs + day * dayMs).toISOString(),
  errorSeconds,
  ...more,
})

/** A fortnight: it gains, the nut is turned on the fifth day, and it runs well within the limit after. */
export const fortnight: readonly CertificateReading[] = [
  reading(0, 0, { wound: true, leftSeconds: 0 }),
  ...[1, 2, 3, 4].map(day => reading(day, day * 12.4, { strikeRight: true, chimeRight: true, inBeat: true })),
  reading(5, 62, { leftSeconds: 0, nutTurns: 0.5, event: 'cased', twelveRight: true }),
  ...[6, 7, 8, 9, 10, 11, 12, 13, 14].map(day =>
    reading(day, (day - 5) * -1.5 + (day % 2), {
      strikeRight: true,
      chimeRight: true,
      inBeat: true,
      wound: day === 7 || day === 14,
      ...(day === 9 ? { temperatureC: 17.5 } : {}),
    }),
  ),
]

const policy = {
  stages: [
    { name: 'out of the case', winds: 1 },
    { name: 'in the case', days: 5 },
  ],
  readingEveryDays: 1,
}

/** A certificate of these readings, assessed by the program itself. */
export const runInOf = (readings: readonly CertificateReading[]): RunInContents => ({
  ...top,
  kind: 'run-in-certificate',
  startedAt: new Date(startMs).toISOString(),
  endedAt: new Date(startMs + 14 * dayMs).toISOString(),
  outcome: 'passed',
  decidedBy: 'Ines Marrow',
  stages: [
    { name: 'out of the case', fromAt: '2027-03-04T09:00:00.000Z', toAt: '2027-03-11T09:00:00.000Z' },
    { name: 'in the case', fromAt: '2027-03-11T09:00:00.000Z', toAt: '2027-03-16T09:00:00.000Z' },
  ],
  limitPerDay: '34',
  readings,
  figures: shelfVerdict({
    clock: {
      durationDays: 8,
      sprung: true,
      isWound: true,
      strike: 'hours',
      countWheel: false,
      chime: true,
      chimeCorrects: false,
      setInBeat: true,
    },
    policy,
    limits: { perDay: 34, steady: 10 },
    readings,
    now: readings.at(-1)?.at ?? '',
  }),
})

export const runIn = runInOf(fortnight)

export const readyLetter: ReadyLetterContents = {
  ...top,
  kind: 'ready-letter',
  readyOn: '2027-03-02',
  unrepaired: false,
  toPay: minor(71582),
  belongings: held,
  week: [
    { day: 1, from: '09:00', to: '12:30' },
    { day: 1, from: '13:00', to: '17:00' },
    { day: 2, from: '09:00', to: '12:30' },
    { day: 2, from: '13:00', to: '17:00' },
    { day: 6, from: '09:00', to: '12:00' },
  ],
}

export const handOver: HandOverContents = {
  ...top,
  kind: 'hand-over',
  handedOver: {
    at: '2027-03-04T11:05:00.000Z',
    toName: 'Aurel Pell',
    authority: 'Letter of Rosamund Pell, identity card seen',
    unpaidReason: 'Pays the rest by transfer on Friday',
  },
  belongings: held.map((thing, i) =>
    i === 2 ? { ...thing, returned: false, reason: 'kept here for gluing' } : { ...thing, returned: true },
  ),
  billed: minor(81582),
  paid: minor(10000),
  due: minor(71582),
  advice: ['level', 'beat', 'wind', 'hands-forward', 'regulate', 'service-again'],
  warranty: { scope: 'overhaul', startOn: '2027-03-05', lastDay: '2028-03-05', number: 'W0088' },
}

export const statement: StatementContents = {
  ...rest,
  kind: 'statement',
  rows: [
    {
      on: '2027-01-10',
      entry: 'payment',
      number: 'R0512',
      method: 'card',
      repairNumber: '2231',
      amount: minor(-10000),
      balance: minor(-10000),
    },
    {
      on: '2027-02-20',
      entry: 'invoice',
      number: 'I1043',
      repairNumber: '2231',
      amount: minor(81582),
      balance: minor(71582),
    },
    {
      on: '2027-02-22',
      entry: 'credit-note',
      number: 'C0031',
      repairNumber: '2231',
      amount: minor(-4608),
      balance: minor(66974),
    },
    {
      on: '2027-02-23',
      entry: 'payment',
      number: 'R0519',
      method: 'transfer',
      repairNumber: '2231',
      amount: minor(-70000),
      balance: minor(-3026),
    },
    {
      on: '2027-02-25',
      entry: 'refund',
      number: 'R0520',
      method: 'cash',
      repairNumber: '2231',
      amount: minor(3026),
      balance: minor(0),
    },
  ],
  before: minor(0),
  billed: minor(76974),
  paid: minor(76974),
  writtenOff: minor(0),
  balance: minor(0),
}

export const uncollectedLetter: UncollectedLetterContents = {
  ...top,
  kind: 'uncollected-letter',
  readyOn: '2026-11-30',
  unrepaired: false,
  days: 94,
  toldOn: '2027-01-08',
  toPay: minor(71582),
  belongings: held,
}

/** One of every working paper. */
export const everyWorkingPaper: readonly WorkingContents[] = [
  tags,
  conditionReport,
  goAhead,
  goAheadSupplement,
  benchCard,
  runIn,
  readyLetter,
  handOver,
  statement,
  uncollectedLetter,
]
