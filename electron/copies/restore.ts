import { existsSync, readdirSync, statfsSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { pathBeside } from '../../db/file/files-beside.ts'
import type { OpenOptions } from '../../db/file/ledger.ts'
import { type LedgerRefusal, LedgerRefused } from '../../db/file/ledger-refused.ts'
import { type Contents, knownTail, lookInto, type NeededFile } from '../../db/file/look.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { refuse } from '../../db/rows/refusal.ts'
import { checks, verified } from '../../db/verify/index.ts'
import { backupPaths } from './backups.ts'
import { besideCopy, giveItsPlace } from './set-aside.ts'

/** A copy of a ledger that could be brought back, and what would come of it. */
export interface CopyLook {
  readonly path: string
  /** Why it cannot be; null where it can. */
  readonly refused: LedgerRefusal | null
  readonly contents: (Omit<Contents, 'files'> & { readonly photographs: number }) | null
  /** True where it is a copy of another ledger than the one in its place. */
  readonly otherLedger: boolean
  /** Entries of the present ledger that it does not have: how many, and after and until which instant; null where none. */
  readonly missing: { readonly count: number; readonly from: string; readonly to: string } | null
  /** How many of its photographs and drawn papers are nowhere to be found. */
  readonly filesMissing: number
}

/** Every copy that stands where this program puts them: backups, and what was kept before a new version; the newest first. */
export function copiesOf(ledger: string): string[] {
  const folder = dirname(ledger)
  const before = existsSync(folder)
    ? readdirSync(folder)
        .filter(name => name.startsWith(`${basename(ledger)}.before-`) && !name.endsWith('.unfinished'))
        .map(name => join(folder, name))
    : []
  return [...backupPaths(ledger), ...before].toSorted((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs)
}

const isSomewhere = (ledger: string, copy: string, { what, hash, ending }: NeededFile): boolean =>
  [ledger, ...besideCopy(ledger, copy)].some(beside => existsSync(pathBeside(beside, what, hash, ending)))

const refusedLook = (path: string, refused: LedgerRefusal): CopyLook => ({
  path,
  refused,
  contents: null,
  otherLedger: false,
  missing: null,
  filesMissing: 0,
})

function missingFrom(contents: Contents, present: ReturnType<typeof knownTail>): CopyLook['missing'] {
  if (!present || present.count <= contents.tail.count) return null
  return { count: present.count - contents.tail.count, from: contents.tail.at, to: present.at }
}

/** True where both paths lead to one file: the ledger is no copy of itself, and must not be opened a second time. */
function isItself(ledger: string, path: string): boolean {
  const [one, other] = [ledger, path].map(file => statSync(file, { bigint: true, throwIfNoEntry: false }))
  return one !== undefined && one.ino === other?.ino && one.dev === other.dev
}

/** Looks at a copy as it stands, and at what would be missing if it took the ledger's place. Nothing is changed. */
export function lookAtCopy(
  ledger: string,
  path: string,
  present: ReturnType<typeof knownTail> = knownTail(ledger),
): CopyLook {
  if (isItself(ledger, path)) return refusedLook(path, 'ledger.inUse')
  try {
    const contents = lookInto(path)
    const { files, ...shown } = contents
    const { identity } = contents
    return {
      path,
      refused: null,
      contents: { ...shown, photographs: files.filter(({ what }) => what === 'photographs').length },
      otherLedger: Boolean(identity && present?.identity && identity !== present.identity),
      missing: missingFrom(contents, present),
      filesMissing: files.filter(file => !isSomewhere(ledger, path, file)).length,
    }
  } catch (error) {
    if (error instanceof LedgerRefused) return refusedLook(path, error.code)
    return refusedLook(path, 'ledger.noAccess')
  }
}

/** A copy keeps no folders of its own name: its photographs and papers are counted by `lookAtCopy`. */
const ofTheFile = Object.keys(checks).filter(name => name !== 'photographs' && name !== 'keptPapers')

/** Makes every check of the file itself; refuses a copy that does not pass. */
function refuseUnsound(path: string, options: OpenOptions): void {
  const ledger = openUntouched(path, options)
  try {
    for (const { name, faults } of verified({
      read: ledger.read,
      file: path,
      path,
      migrations: options.migrations,
    }))
      if (ofTheFile.includes(name) && faults.length > 0)
        refuse('restore.unsound', 'path', { faults: faults.length })
  } finally {
    ledger.close()
  }
}

/** Refuses where the disk has no room for the copy beside what is there. */
function refuseNoRoom(ledger: string, path: string): void {
  const { bavail, bsize } = statfsSync(dirname(ledger))
  if (bavail * bsize < statSync(path).size * 1.1) refuse('restore.noRoom', 'path')
}

/** What is asked to be brought back. */
export interface BringBack {
  readonly path: string
  /** Said where it is known to be a copy of another ledger. */
  readonly otherLedger: boolean
}

/**
 * Gives the place of a closed ledger to a copy, after every check of it; returns the folder into which what stood there was moved.
 * Refuses, with everything as it was: a copy that is no sound ledger, one of another ledger unless that is said, a disk without room.
 */
export function restore(ledger: string, { path, otherLedger }: BringBack, options: OpenOptions): string {
  if (!existsSync(path)) refuse('restore.nothingThere', 'path')
  const look = lookAtCopy(ledger, path)
  if (look.refused) refuse('restore.refused', 'path', { reason: look.refused })
  if (look.otherLedger && !otherLedger) refuse('restore.otherLedger', 'path')
  refuseNoRoom(ledger, path)
  refuseUnsound(path, options)
  return giveItsPlace(ledger, path, options.now())
}
