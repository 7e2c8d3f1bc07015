import type { RoundingMode } from '../../money/div-round.ts'
import type { Role } from '../../people/roles.ts'
import type { LineKind } from '../../pricing/kinds/index.ts'
import type { PolicySource } from '../../run-in/policy.ts'
import type { TaxDue } from '../../tax/due.ts'
import { limits } from './limits.ts'

/** The Shop page: what the shop is and how it works, one group of settings at a time. */
export const shop = {
  contents: 'Contents of this page',
  groups: {
    name: 'Name and papers',
    place: 'Place and money',
    hours: 'Hours of the week',
    closed: 'Closed days',
    prices: 'Price book',
    tax: 'Tax',
    'e-invoice': 'E-invoices',
    estimates: 'Estimates',
    warranty: 'Warranty',
    'run-in': 'Run-in',
    limits: 'How near, how steady',
    uncollected: 'Uncollected clocks',
    places: 'Shelf places',
    people: 'People',
    privacy: 'Personal data',
    backups: 'Backups',
  },
  save: 'Save',
  change: 'Change',
  saved: (group: string) => `Saved: ${group}. Papers issued before stay as they are.`,

  name: {
    intro: 'What stands at the head of every paper from now on.',
    name: 'Name of the shop',
    address: 'Address',
    addressHint: 'One line below the other, as on an envelope.',
    phone: 'Telephone',
    email: 'E-mail',
    taxNumber: 'Tax registration',
    taxNumberHint: 'Printed on invoices where the shop is registered. Leave it empty otherwise.',
  },

  place: {
    intro: 'Where the shop is, and how its dates, figures and money are written.',
    country: 'Country',
    countryHint: 'How telephone numbers without a prefix are read.',
    locale: 'Way of writing dates and figures',
    shown: (date: string, amount: string) => `${date} and ${amount}`,
    notShown: 'A language and region, such as en-GB.',
    timeZone: 'Time zone',
    currency: 'Currency',
    currencyHint: 'One ledger keeps one currency: it can be changed only until the first paper is issued.',
    cashStep: 'Cash is rounded to',
    cashStepHint:
      'The smallest amount paid in cash, as 0.05 where there is no smaller coin; 0 where nothing is rounded. The difference is recorded by itself.',
    paper: 'Paper',
    papers: { a4: 'A4', letter: 'US Letter' },
    units: 'Measures',
    unitsOf: { mm: 'millimetres', in: 'inches' },
  },

  hours: {
    intro:
      'Estimated dates and the run-in go by these hours. A break is the gap between two stretches; leave both fields empty where the shop is closed.',
    weekdays: ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'],
    day: 'Day',
    stretch: (n: number) => (n === 1 ? 'First opening' : n === 2 ? 'Second opening' : `Opening ${n}`),
    from: (day: string, n: number) => `${day}, opening ${n}, from`,
    to: (day: string, n: number) => `${day}, opening ${n}, to`,
    until: 'to',
  },

  closed: {
    intro: 'Days the shop is shut beyond its week: public holidays, stocktaking, holidays of its own.',
    list: 'Days entered as closed',
    date: 'Date',
    name: 'Why',
    open: 'Open after all',
    openOf: (date: string) => `Open after all on ${date}`,
    opened: (date: string) => `The shop is open on ${date}.`,
    empty: 'No closed day is entered yet.',
    addTitle: 'Enter one day',
    add: 'Enter it',
    added: (date: string) => `The shop is closed on ${date}.`,
    fillTitle: 'Fill in public holidays',
    fillHint: 'A start, not the law: take out what the shop works on, and add what is missing.',
    country: 'Country',
    region: 'Region',
    wholeCountry: 'the whole country',
    year: 'Year',
    look: 'Show them',
    found: 'Public holidays found',
    nothing: 'No public holiday is known for this place in what is left of the year.',
    there: 'entered already',
    fill: (n: number) => (n === 1 ? 'Close on this day' : `Close on these ${n} days`),
    filled: (n: number) => (n === 1 ? '1 closed day is entered.' : `${n} closed days are entered.`),
  },

  prices: {
    intro:
      'What a line of an estimate is taken from. All of it is the shop’s own policy; lines written before keep their price. Before tax, unless prices contain it (see Tax).',
    benchRate: 'Hourly rate',
    benchRateHint: 'What an hour of labour is charged at.',
    minimumCharge: 'Minimum charge for labour',
    minimumChargeHint: '0 where there is none.',
    rushPercent: 'Added for rush work',
    hoursTitle: 'Hours of work',
    hoursHint:
      'To begin with: 4 hours for an overhaul of two trains, 5 for three, as is common practice, parts and bushings extra; the other lines are only a start and yours to set. The line that says most about the clock counts.',
    lineOf: (n: number) => `line ${n}`,
    work: 'Work',
    noWork: 'choose …',
    form: 'Kind of clock',
    anyForm: 'any clock',
    trains: 'Trains',
    anyTrains: 'any',
    hours: 'Hours',
    markupTitle: 'Added to the cost of parts',
    markupHint:
      'In order of rising cost; leave the cost of the last tier empty for any cost above. The figures to begin with are a policy of our own.',
    tierOf: (n: number) => `tier ${n}`,
    upToCost: 'Cost up to',
    percent: 'Added',
    outsidePercent: 'Added to outside work',
    outsidePercentHint: 'On what the vendor charges the shop.',
    callOutTitle: 'House calls',
    callOutHint: 'Distances in the unit the shop reckons in, there and back or one way as it likes.',
    callOutFee: 'Each call',
    freeDistance: 'Distance without charge',
    perDistance: 'Each unit beyond it',
    eachFurtherClock: 'Each clock after the first',
    feeTitle: 'Fee for an estimate',
    estimateFee: 'Fee',
    estimateFeeHint: '0 where an estimate costs nothing. Once paid it is taken off when the work goes ahead.',
  },

  tax: {
    intro:
      'What is taxed, and at which rate, differs from place to place: ask whoever knows the law where you are. A change holds for papers written from now on.',
    inclusive: 'Prices contain the tax',
    inclusiveHint: 'Unticked: the tax is added to the prices.',
    due: 'Accounted for',
    dues: {
      invoice: 'with the invoice',
      payment: 'with the money for it',
    } satisfies Record<TaxDue, string>,
    dueHint: 'Which of the two a shop may choose is a matter of local law.',
    basis: 'Worked out',
    bases: { group: 'on the sum of each rate', line: 'on each line' },
    mode: 'Rounded',
    modes: {
      'half-up': 'half up',
      'half-even': 'half to even',
      down: 'down',
    } satisfies Record<RoundingMode, string>,
    aggregate: 'Several taxes on a line are added up before rounding',
    kinds: {
      labour: 'On labour',
      part: 'On parts',
      outside: 'On outside work',
      fee: 'On fees',
    } satisfies Record<LineKind, string>,
    kindsHint: 'An empty line is left out; a kind without a line is not taxed.',
    code: 'Name on papers',
    rate: 'Percent',
    taxOf: (n: number) => `tax ${n}`,
  },

  eInvoice: {
    intro:
      'An invoice as a file that other programs read (EN 16931, UBL 2.1 XML), beside the PDF. Whether one is asked for, and how it must be sent, is a matter of local law.',
    on: 'Offer invoices and credit notes as e-invoices as well',
  },

  estimates: {
    intro: 'The terms a new estimate carries.',
    validDays: 'Valid for',
    days: 'days',
    overrun: 'Beyond the agreed sum',
    overrunHint:
      'How far a bill may pass what the owner agreed to before work stops for a new go-ahead. The smaller of the two counts; local law may set less.',
    overrunPercent: 'At most',
    overrunAmount: 'and at most',
  },

  warranty: {
    intro:
      'The shop’s own terms, printed on each certificate when it is given; certificates given before keep theirs. They add to the rights the law gives and take none away.',
    terms: 'How long, by the work done',
    scope: 'Work',
    length: 'Length',
    unit: 'Counted in',
    units: { months: 'months', days: 'days' },
    lengthHint: 'Empty: no warranty on such work.',
    startsOn: 'It begins',
    starts: {
      collection: 'when the clock is collected',
      invoice: 'on the day of the invoice',
      ready: 'when the clock is ready',
    },
    convention: 'Its last day',
    conventions: {
      'same-date': 'has the date of the first day',
      'day-before': 'is the day before that date',
    },
    onComeback: 'A comeback put right under it',
    comebacks: { continue: 'leaves the term as it is', restart: 'begins the term anew' },
    pausesInShop: 'Days in the shop are added at the end',
    exclusions: 'Does not cover',
  },

  limits,

  runIn: {
    intro:
      'How long a clock is tested before it leaves, and how often it is read. These are the shop’s own policy: no published figures by type of movement were found. A run-in already begun keeps its plan.',
    sources: {
      'shop policy': 'The lengths to begin with are a policy of our own.',
      'common practice': 'To begin with, as is common practice: at least one full wind in each stage.',
    } satisfies Record<PolicySource, string>,
    movement: (duration: string) => `${duration} movements`,
    stage: 'Stage',
    length: 'For',
    unit: 'Counted in',
    units: { winds: 'full winds', days: 'days' },
    stageOf: (n: number) => `stage ${n}`,
    readingEveryDays: 'A reading every',
    days: 'days',
    save: (duration: string) => `Save ${duration}`,
    saved: (duration: string) => `Saved: the run-in of ${duration} movements.`,
  },

  uncollected: {
    intro: 'After how long a clock that is ready and not collected is marked as such on the Counter.',
    days: 'Days after it is ready',
    law: 'Local law comes first.',
    lawAdvice:
      'What may be done with a clock that is not collected, after how long, and what notice the owner must have, is a matter of local law. Ask for advice before charging storage, selling or disposing of anything; this mark is only a reminder.',
  },

  places: {
    intro: 'Where clocks stand or hang to be tested, in the order of the daily round.',
    list: 'Shelf places',
    order: 'No.',
    place: 'Place',
    kind: 'Kind',
    empty: 'No place is entered yet.',
    addTitle: 'Enter a place',
    name: 'Name',
    nameHint: 'As it is called in the shop, such as upper shelf 3.',
    add: 'Enter the place',
    added: (name: string) => `${name} is entered, last on the round.`,
  },

  people: {
    intro:
      'Who works here. Each act in the day book carries a name; what someone did stays on record when they leave.',
    list: 'People',
    person: 'Name',
    roles: 'Roles',
    rolesMay: {
      owner: 'may do everything',
      bench: 'works on clocks',
      counter: 'takes money and writes invoices',
    } satisfies Record<Role, string>,
    initials: 'Initials',
    initialsHint: (usual: string) => (usual ? `Left empty: ${usual}.` : 'Left empty: those of the name.'),
    benchHours: 'At the bench',
    benchHoursHint: 'Hours a week. Leave it empty where nobody counts them.',
    hours: 'h a week',
    save: 'Save',
    changed: (name: string) => `Saved: what ${name} does here.`,
    standing: 'Works here',
    here: 'yes',
    gone: 'no longer',
    leave: 'No longer here',
    leaveOf: (name: string) => `${name} no longer works here`,
    left: (name: string) => `Recorded: ${name} no longer works here.`,
    return: 'Here again',
    returnOf: (name: string) => `${name} works here again`,
    returned: (name: string) => `Recorded: ${name} works here again.`,
    addTitle: 'Enter a person',
    name: 'Name',
    add: 'Enter the person',
    added: (name: string) => `${name} is entered.`,
  },

  privacy: {
    intro:
      'An owner may ask that their personal data be deleted: “Forget this owner” stands among the other acts on an owner’s page. Papers that were issued are kept as long as tax law asks.',
    law: 'From memory, most countries ask for 6 to 10 years after the end of the year of issue. Local law decides.',
    years: 'Years that issued papers are kept',
  },

  backups: {
    intro:
      'The ledger is one file, with its photographs and issued papers in two folders beside it. A backup is a checked copy of all of it.',
    ledger: 'The ledger',
    folder: 'Backups',
    last: 'Last backed up',
    never: 'not yet',
    elsewhere:
      'A copy on the same disk does not outlive the disk. Choose a folder on another disk or a memory stick, and keep one copy out of the shop.',
    settings: 'How backups are made',
    automatic: 'Make backups without being asked',
    automaticHint:
      'At the first start of a day, when the shop has closed, on closing the program, and before a list is read in, where something was entered since the last one.',
    into: 'Folder',
    intoHint:
      'The whole path of a folder on another disk or a memory stick, such as /media/stick/Countwheel: a folder on the stick, not the stick itself. Left empty, backups go beside the ledger, which is the weaker place.',
    keep: 'One each is kept of the last',
    days: 'days',
    weeks: 'weeks',
    months: 'months',
    years: 'years',
    yearsHint: 'Left empty, every year keeps one.',
    wholeDays:
      'All of the last two days with backups are kept as well, and the newest always is. Photographs and papers go when no backup needs them any more. These figures are our own default.',
    late: 'Say on the Counter when the last backup is so many days old',
    changed: 'Saved: backups. The next one is made accordingly.',
    backUp: 'Back up now',
    done: (file: string) => `Backed up as ${file}.`,
    openFolder: 'Show the ledger’s file',
    list: 'Backups, the newest first',
    at: 'Written',
    file: 'File',
    size: 'Size in kB',
    empty: 'No backup has been written yet.',
    restore: 'Bring a backup back …',
  },
}
