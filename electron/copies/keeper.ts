import { existsSync } from 'node:fs'
import { type CopyStanding, copyDue, copyLateDays } from '../../core/backups/due.ts'
import type { Instant } from '../../core/calendar/zone.ts'
import { problem } from '../../core/problems.ts'
import { openingBackups } from '../../core/shop/defaults.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Ledger } from '../../db/file/ledger.ts'
import { readManifest } from '../../db/file/manifest.ts'
import { firstEntryAfter } from '../../db/rows/day-book.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import { isShopOpen, readSettings } from '../../db/rows/settings.ts'
import { type Backup, backupFolder, backupsOf, copyPath, rememberedCopy } from './backups.ts'
import { pruneCopies } from './prune.ts'
import { writeBackup } from './write-backup.ts'

/** How the copies of an open ledger stand, to be shown. */
export interface CopiesView {
  readonly automatic: boolean
  readonly folder: string
  /** Whether the folder is there; its disk or stick may be away. */
  readonly there: boolean
  /** The last good copy; null where none is known. */
  readonly copiedAt: Instant | null
  /** How many days ago that was, where it is late; null where it is not. */
  readonly lateDays: number | null
  /** Why the last copy was not made; empty where it was. */
  readonly failed: Refusal['problems']
  /** When a copy was made because the folder was there again; null where it never was away. */
  readonly cameBackAt: Instant | null
}

/** Makes the copies of an open ledger that nobody asks for, and those that somebody does: one at a time. */
export interface CopyKeeper {
  /** Makes a copy if one is due. It never rejects: what went wrong is told by `view`. */
  look(): Promise<void>
  /** Makes a copy now. Rejects with the refusal that says why not. */
  copyNow(): Promise<Backup>
  /** Makes a copy before something that changes much: where the shop's folder is away or full, beside the ledger. */
  copyBefore(): Promise<void>
  /** The last copy before the ledger is closed, where an entry stands in none. It never rejects. */
  atClosing(): Promise<void>
  view(): CopiesView
  /** Ends a copy that is being made, and makes no more. */
  stop(): Promise<void>
}

/** A copy that failed is not tried again at every look: on a full disk each try writes the whole ledger. */
const lookAgainMs = 15 * 60_000

const settingsOf = ({ read }: Ledger): Settings | undefined =>
  isShopOpen(read) ? readSettings(read) : undefined

/** Where the shop's copies go. */
export const shopsFolder = (ledger: Ledger): string =>
  settingsOf(ledger)?.backups.folder || backupFolder(ledger.file)

interface Known {
  readonly at: Instant
  readonly count: number
  readonly hash: string
}

/** The last good copy: the newest in the folder while that is there, else what is remembered of it beside the ledger. */
function lastCopy({ file }: Ledger, folder: string): Known | null {
  const remembered = rememberedCopy(file)
  const known = remembered?.folder === folder ? remembered : null
  if (!existsSync(folder)) return known
  const newest = backupsOf(file, folder)[0]
  if (!newest) return null
  const head = readManifest(copyPath(folder, file, newest.at))?.head
  return { at: newest.at, count: head?.count ?? 0, hash: head?.hash ?? '' }
}

/** A keeper of the ledger's copies; `now` is the present instant. It makes none by itself until it is told to look. */
export function copyKeeper(ledger: Ledger, now: () => Instant): CopyKeeper {
  const ending = new AbortController()
  let work: Promise<unknown> = Promise.resolve()
  let looked = false
  let wasAway = false
  let cameBackAt: Instant | null = null
  let failed: { readonly problems: Refusal['problems']; readonly at: number } | undefined

  const standing = (settings: Settings): CopyStanding => {
    const copy = lastCopy(ledger, shopsFolder(ledger))
    return {
      now: now(),
      copiedAt: copy?.at ?? null,
      uncopiedSince: firstEntryAfter(ledger.read, copy),
      week: settings.hours.week,
      timeZone: settings.place.timeZone,
    }
  }

  const write = async (folder: string): Promise<Backup> => {
    const made = await writeBackup(ledger, { at: now(), folder, signal: ending.signal })
    const settings = settingsOf(ledger)
    if (settings) await pruneCopies(folder, ledger.file, settings.backups.keep, settings.place.timeZone)
    return made
  }

  /** One after the other, for they write the same files. */
  const inTurn = <T>(body: () => Promise<T>): Promise<T> => {
    const next = work.then(body, body)
    work = next.catch(() => {})
    return next
  }

  const tried = async (): Promise<void> => {
    const folder = shopsFolder(ledger)
    try {
      await write(folder)
      failed = undefined
      if (wasAway) cameBackAt = now()
      wasAway = false
    } catch (error) {
      if (ending.signal.aborted) return
      if (!(error instanceof Refusal)) console.error(error)
      const problems = error instanceof Refusal ? error.problems : [problem('backup.failed', '', { folder })]
      failed = { problems, at: Date.parse(now()) }
    }
  }

  const isDue = (settings: Settings): boolean => {
    const how = standing(settings)
    if (how.uncopiedSince === null) return false
    if (wasAway) return true
    const waits = failed && Math.abs(Date.parse(now()) - failed.at) < lookAgainMs
    return !waits && (failed !== undefined || copyDue(how) !== null)
  }

  /** The shop's settings where it wants copies made by themselves. */
  const wanted = (): Settings | undefined => {
    const settings = ending.signal.aborted ? undefined : settingsOf(ledger)
    return settings?.backups.automatic ? settings : undefined
  }

  const look = async (): Promise<void> => {
    const settings = wanted()
    if (!settings) return
    const folder = shopsFolder(ledger)
    if (folder !== backupFolder(ledger.file) && !existsSync(folder)) wasAway = true
    else if (isDue(settings)) await tried()
    else wasAway = false
  }

  return {
    look: () =>
      inTurn(look)
        .catch(console.error)
        .finally(() => {
          looked = true
        }),
    copyNow: () =>
      inTurn(async () => {
        const made = await write(shopsFolder(ledger))
        failed = undefined
        return made
      }),
    copyBefore: () =>
      inTurn(async () => {
        if (!wanted()) return
        await write(shopsFolder(ledger)).catch(() => write(backupFolder(ledger.file)))
      }),
    atClosing: () =>
      inTurn(async () => {
        const settings = wanted()
        if (settings && standing(settings).uncopiedSince !== null) await tried()
      }).catch(console.error),
    view: () => {
      const settings = settingsOf(ledger)
      const folder = shopsFolder(ledger)
      const how = settings && standing(settings)
      const late = settings && how && copyLateDays(how, settings.backups.lateDays)
      return {
        automatic: settings?.backups.automatic ?? openingBackups.automatic,
        folder,
        there: folder === backupFolder(ledger.file) || existsSync(folder),
        copiedAt: how?.copiedAt ?? null,
        // Before the first look a copy may be on its way.
        lateDays: looked ? (late ?? null) : null,
        failed: failed?.problems ?? [],
        cameBackAt,
      }
    },
    stop: async () => {
      ending.abort()
      await work
    },
  }
}
