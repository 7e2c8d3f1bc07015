import type { TurnRoundPart } from '../../reports/turn-round.ts'

/** The figures a shop can know itself by, each with what it is counted from. */
export const figures = {
  title: 'Figures',
  print: 'Print these figures',
  handedOver: (n: number) => (n === 1 ? 'clock handed over' : 'clocks handed over'),
  empty: 'Nothing to count in this period.',
  clocks: 'Clocks',
  take: 'as a table (CSV)',
  work: 'Work',
  form: 'Form of clock',
  all: 'All',

  hours: {
    title: 'Estimated against worked hours',
    from: 'Counted from the hours of the labour lines owners agreed to and the labour entries that stand, of the clocks handed over in this period whose work was agreed to.',
    byWork: 'by work',
    byForm: 'by form of clock',
    estimated: 'Estimated',
    worked: 'Worked',
    over: 'Over or under',
    percent: 'Worked of estimated',
  },

  turnRound: {
    title: 'Turn-round in days',
    from: 'Mean days from intake to hand-over of the clocks that became ready, told apart by what is on record: run-ins; the time from ready on; the time until the go-ahead; waits, outside work away and findings until the owner’s answer; the rest is the bench. The weeks on the shelf are the test, not delay.',
    parts: {
      word: 'Until the go-ahead',
      bench: 'Bench',
      waiting: 'Waiting',
      'run-in': 'Run-in',
      'to-collect': 'To be collected',
    } satisfies Record<TurnRoundPart, string>,
    all: 'In the shop',
  },

  comebacks: {
    title: 'Comebacks',
    from: 'Of the clocks handed over in this period, those taken in again since as a comeback of that repair. Young hand-overs may still come back.',
    byMonth: 'by month of hand-over',
    byWork: 'by work',
    month: 'Month',
    handedOver: 'Handed over',
    cameBack: 'Came back',
    percent: 'Share',
  },

  earned: {
    title: 'What each bench hour earned',
    from: 'The labour billed for the clocks handed over in this period, without tax and less what was credited, shared by the minutes each person worked on the clock.',
    person: 'Person',
    hours: 'Hours',
    earned: 'Earned',
    perHour: 'For each hour',
    unworked: (amount: string) => `${amount} of labour was billed where no time is on record.`,
  },

  stock: {
    title: 'What the stock is worth',
    from: 'Pieces in stock at this moment at the cost on record of each part; the period does not matter to it.',
    kind: 'Kind',
    parts: 'Parts',
    pieces: 'Pieces',
    value: 'Worth at cost',
  },
}
