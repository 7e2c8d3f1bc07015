import { copyFileSync, existsSync, mkdirSync, readdirSync, renameSync } from 'node:fs'
import { join } from 'node:path'

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

/** Copies every photograph of the folder `from` that is missing in `to`; nothing where there are none yet. */
export function copyMissingPhotographs(from: string, to: string): void {
  if (!existsSync(from)) return
  for (const part of readdirSync(from, { withFileTypes: true }))
    if (part.isDirectory()) copyMissing(join(from, part.name), join(to, part.name))
}
