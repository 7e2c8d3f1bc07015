import { copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import { folderBeside, keptBeside } from '../../db/file/files-beside.ts'
import { refuse } from '../../db/rows/refusal.ts'

/** Copies whole or not at all. */
function copyWhole(from: string, to: string): void {
  copyFileSync(from, `${to}.unfinished`)
  renameSync(`${to}.unfinished`, to)
}

const isWhole = (name: string) => !name.endsWith('.unfinished')

/** Copies one folder's files that are missing in the other; those that are there have the same bytes, as their names say. */
function copyMissing(from: string, to: string): void {
  mkdirSync(to, { recursive: true, mode: 0o700 })
  const there = new Set(readdirSync(to))
  for (const name of readdirSync(from))
    if (isWhole(name) && !there.has(name)) copyWhole(join(from, name), join(to, name))
}

function copyFolder(from: string, to: string): void {
  if (!existsSync(from)) return
  if (!statSync(from).isDirectory()) refuse('folder.isAFile', '', { name: basename(from) })
  for (const part of readdirSync(from, { withFileTypes: true }))
    if (part.isDirectory()) copyMissing(join(from, part.name), join(to, part.name))
}

/** Copies every photograph and paper beside the ledger that is missing in the folder of its backups. */
export function copyBeside(ledgerFile: string, folder: string): void {
  for (const what of keptBeside) {
    const from = folderBeside(ledgerFile, what)
    copyFolder(from, join(folder, basename(from)))
  }
}
