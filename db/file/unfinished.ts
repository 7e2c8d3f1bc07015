import { readdirSync, rmSync, statSync } from 'node:fs'
import { basename, dirname, join, parse } from 'node:path'
import { folderBeside, keptBeside } from './files-beside.ts'

/** How everything ends that is written beside its place first: what a killed program left behind has this name still. */
export const unfinishedEnd = '.unfinished'

const namesIn = (folder: string) => {
  try {
    return readdirSync(folder, { withFileTypes: true })
  } catch {
    return []
  }
}

function* unfinishedIn(folder: string, levels: number): Generator<string> {
  for (const entry of namesIn(folder)) {
    const path = join(folder, entry.name)
    if (entry.isFile() && entry.name.endsWith(unfinishedEnd)) yield path
    else if (entry.isDirectory() && levels > 0) yield* unfinishedIn(path, levels - 1)
  }
}

/** Takes away what of a ledger's copies was left half written in their folder; `namesake` is the ledger's name there. */
export function sweepFolder(namesake: string): void {
  const { dir, name } = parse(namesake)
  const copies = [...unfinishedIn(dir, 0)].filter(path => basename(path).startsWith(`${name} `))
  const beside = keptBeside.flatMap(what => [...unfinishedIn(folderBeside(namesake, what), 1)])
  for (const path of [...copies, ...beside]) rmSync(path, { force: true })
}

/** A file system's clock ticks more coarsely than the system's own. */
const coarseMs = 50

/**
 * Takes away what a killed program left half written: copies of this ledger beside it, photographs and papers. Only for the process that holds the ledger, which since
 * `openedMs` writes files of its own under such names; what cannot be taken away stays.
 */
export function sweepUnfinished(ledgerFile: string, openedMs: number): void {
  const [folder, name] = [dirname(ledgerFile), basename(ledgerFile)]
  const beside = [...unfinishedIn(folder, 0)].filter(path => basename(path).startsWith(name))
  const inside = keptBeside.flatMap(what => [...unfinishedIn(folderBeside(ledgerFile, what), 1)])
  for (const path of [...beside, ...inside])
    if ((statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? openedMs) < openedMs - coarseMs)
      rmSync(path, { force: true })
}
