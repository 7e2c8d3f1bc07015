import { start } from '../../core/words/en/start.ts'
import { folderBeside, type KeptBeside } from '../../db/file/files-beside.ts'
import { logOf } from '../../db/file/judge.ts'
import { type Ledger, type OpenOptions, openLedger } from '../../db/file/ledger.ts'
import { type LedgerRefusal, LedgerRefused } from '../../db/file/ledger-refused.ts'
import { sweepUnfinished } from '../../db/file/unfinished.ts'
import { refuseReserved } from '../../db/rules/may.ts'
import { type CopyKeeper, copyKeeper } from '../copies/keeper.ts'
import { restore } from '../copies/restore.ts'
import { finishChange, setAside, setAsideForeign } from '../copies/set-aside.ts'
import { freshDemo } from '../day/prepared-demo.ts'
import { paperKeeper } from '../papers/keeper.ts'
import { places } from '../places.ts'
import { personOf } from '../server/acting.ts'
import { closedHandler } from '../server/closed-handler.ts'
import { createHandler } from '../server/handler.ts'
import type { Handle } from '../server/hosts/limits.ts'
import type { Desk } from '../server/requests/restore.ts'
import { refusedSentence } from './opening-refused.ts'
import { outside } from './outside.ts'

/** Refusals about which a person can decide something on the opening page; the others are told, and the program ends. */
const decidable: Partial<Record<LedgerRefusal, { readonly mayGoOn: boolean }>> = {
  'ledger.damaged': { mayGoOn: false },
  'ledger.otherHistory': { mayGoOn: false },
  'ledger.brokenReferences': { mayGoOn: false },
  'ledger.vanished': { mayGoOn: false },
  'ledger.foreignLog': { mayGoOn: true },
  'ledger.foreignFolders': { mayGoOn: true },
  'ledger.entriesMissing': { mayGoOn: true },
}

const options: OpenOptions = { migrations: places.migrations, ...outside }

interface Asked {
  readonly file: string
  /** Play the demonstration shop into a fresh ledger. */
  readonly demo: boolean
  /** Whether the pages can ask what is to be done where the ledger cannot be opened as it stands. */
  readonly asks: boolean
}

interface Open {
  readonly ledger: Ledger
  readonly handle: Handle
  readonly copies: CopyKeeper
  close(): void
}

/** How long after opening, and how often from then on, it is looked whether a copy is to be made: the first page goes before it. */
const firstLookMs = 3000
const lookMs = 10_000

/** Looks for copies to be made while the ledger is open; returns how to end that. */
function lookingForCopies(copies: CopyKeeper): () => void {
  const first = setTimeout(() => copies.look(), firstLookMs).unref()
  const again = setInterval(() => copies.look(), lookMs).unref()
  return () => {
    clearTimeout(first)
    clearInterval(again)
  }
}

/** Serves an open ledger, between answers draws and keeps the papers that were issued, and makes copies; of a demonstration only when asked. */
function serving(ledger: Ledger, now: () => string, demo = false): Open {
  const keeper = paperKeeper(ledger)
  // Nobody waits for this, so the first page goes before it.
  const openedMs = Date.now()
  const sweep = setTimeout(() => sweepUnfinished(ledger.file, openedMs), 1000).unref()
  const copies = copyKeeper(ledger, now)
  const noMoreLooks = demo ? () => {} : lookingForCopies(copies)
  const answer = createHandler({ ledger, now, pages: places.pages, copies })
  return {
    ledger,
    handle: async request => {
      const answered = await answer(request)
      keeper.wake()
      return answered
    },
    copies,
    close: () => {
      clearTimeout(sweep)
      noMoreLooks()
      void copies.stop()
      keeper.stop()
      ledger.close()
    },
  }
}

async function demonstration(file: string): Promise<Open> {
  console.error(start.playing)
  const { ledger, now } = await freshDemo(file, outside.random)
  return serving(ledger, now, true)
}

const opened = (file: string, how: Partial<OpenOptions> = {}): Open =>
  serving(openLedger(file, { ...options, ...how }), outside.now)

/** What of the ledger's surroundings a refusal says is not its own. */
function foreignPaths(file: string, { code, values }: LedgerRefused): string[] {
  if (code === 'ledger.foreignLog') return [logOf(file)]
  const folders = String(values.folders ?? '').split(', ')
  return code === 'ledger.foreignFolders' ? folders.map(what => folderBeside(file, what as KeptBeside)) : []
}

interface OpenDesk {
  readonly handle: Handle
  /** Makes the last copy before closing, where one is wanted. */
  lastCopy(): Promise<void>
  close(): void
}

/** The ledger in this process's hands, and the one handle through which it is reached, whatever stands in its place. */
export async function openDesk({ file, demo, asks }: Asked): Promise<OpenDesk> {
  let open: Open | undefined
  let refused: LedgerRefused | undefined
  /** Opens, or keeps the reason why not where a person can decide about it. */
  const tryOpening = (how: Partial<OpenOptions> = {}) => {
    try {
      open = opened(file, how)
      refused = undefined
    } catch (error) {
      if (!asks || !(error instanceof LedgerRefused) || !decidable[error.code]) throw error
      refused = error
    }
  }
  const giveUp = () => {
    open?.close()
    open = undefined
  }
  const desk: Desk = {
    file,
    notOpen: () =>
      refused
        ? {
            code: refused.code,
            message: refusedSentence(refused, file),
            mayGoOn: decidable[refused.code]?.mayGoOn ?? false,
          }
        : null,
    refuseRestoring: request => {
      if (!open) return
      const { read } = open.ledger
      refuseReserved(read, 'restore.bringBack', personOf(read, request))
    },
    bringBack: async asked => {
      await open?.copies.stop()
      giveUp()
      try {
        return restore(file, asked, options)
      } finally {
        tryOpening()
      }
    },
    beginNew: async () => {
      const aside = setAside(file, outside.now())
      tryOpening()
      return aside
    },
    goOn: async () => {
      if (refused) setAsideForeign(file, foreignPaths(file, refused), outside.now())
      tryOpening({ withoutMissing: true })
    },
  }
  finishChange(file)
  if (demo) open = await demonstration(file)
  else tryOpening()
  const closed = closedHandler({ desk, pages: places.pages })
  return {
    handle: request => closed(request, open?.handle),
    lastCopy: async () => {
      if (!demo) await open?.copies.atClosing()
    },
    close: giveUp,
  }
}
