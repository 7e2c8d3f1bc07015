import { acts } from './acts.ts'

/** Why a copy cannot be brought back. */
const reasons: Readonly<Record<string, string>> = {
  'ledger.foreign': 'it is not a Countwheel ledger.',
  'ledger.damaged': 'it is damaged.',
  'ledger.foreignLog': 'beside it lies a log that is not its own.',
  'ledger.newer': 'it was written by a newer Countwheel.',
  'ledger.otherHistory': 'it was made by another kind of Countwheel.',
  'ledger.brokenReferences': 'it has entries that point to nothing.',
  'ledger.inUse': 'it is open in another program.',
  'ledger.notAFile': 'it is not a file.',
}

/** Why a copy cannot be brought back, to stand after a colon. */
export const copyRefused = (reason: unknown): string => reasons[String(reason)] ?? 'it cannot be read by you.'

/** The name of an act as the day book has it. */
export const actName = (act: string | null): string =>
  act === null ? 'nothing entered yet' : ((acts as Record<string, string>)[act] ?? act)

const entries = (n: number) => (n === 1 ? 'One entry' : `${n} entries`)

/** Bringing a backup back: on the Shop page, on the opening page, and by `npm run restore`. */
export const restore = {
  usage: [
    'npm run restore -- --ledger FILE                            lists the copies of a ledger that can be brought back',
    'npm run restore -- --ledger FILE --from COPY --look         says what stands in a copy and what would be missing',
    'npm run restore -- --ledger FILE --from COPY [--other-ledger]   brings it back; what is there now is moved aside, never deleted',
  ].join('\n'),
  noCopies: 'No backup was found in its usual place.',
  title: 'Bring a backup back',
  needsDecision: 'This ledger cannot be opened as it stands',
  intro:
    'Choose a copy. What stands in its place now, with its photographs and papers, is moved into a folder of its own beside it and never deleted.',
  copies: 'Copies in the usual places, the newest first',
  none: 'There is no copy in the usual places. Name one on another disk or a memory stick below.',
  another: 'A copy elsewhere',
  anotherHint: 'The whole path of the file, as on a memory stick.',
  look: 'Look at it',
  choose: 'Look at this one',
  copy: 'Copy',
  last: 'Last entry',
  holds: 'Holds',
  missing: 'Would be missing',
  nothing: 'nothing',
  contents: ({ owners, clocks, repairs, papers, entries: n }: ContentsCounts) =>
    `${owners} owners, ${clocks} clocks, ${repairs} repairs, ${papers} papers, ${n} entries in the day book`,
  lastAct: (act: string | null) => actName(act),
  missingEntries: ({ count, from, to }: { count: number; from: string; to: string }) =>
    `${entries(count)}: what was entered ${from ? `after ${from}` : 'from the beginning'} until ${to}`,
  filesMissing: (n: number) =>
    n === 1
      ? 'One photograph or drawn paper is nowhere to be found.'
      : `${n} photographs or drawn papers are nowhere to be found.`,
  cannot: (reason: unknown) => `This copy cannot be brought back: ${copyRefused(reason)}`,
  otherLedger: 'This is a copy of another ledger.',
  otherLedgerTick: 'Yes, it shall take this ledger’s place',
  bringBack: 'Bring this copy back',
  back: 'Choose another',
  done: ({ folder }: { folder: string }) => `The copy is in its place. What stood there is in ${folder}.`,
  checking: 'Every check of the copy is made first; that takes a while with a large ledger.',
  goOn: 'Go on with the ledger as it is',
  goOnWhy:
    'What is missing stays missing. What lies beside the ledger and is not its own is moved into a folder beside it.',
  beginNew: 'Begin a new shop',
  beginNewWhy: 'What is there is moved into a folder of its own beside it, and an empty ledger begun.',
}

interface ContentsCounts {
  readonly owners: number
  readonly clocks: number
  readonly repairs: number
  readonly papers: number
  readonly entries: number
}
