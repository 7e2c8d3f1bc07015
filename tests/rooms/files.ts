import { readdirSync } from 'node:fs'
import { join, relative } from 'node:path'
import { type Source, sourceAt } from './source.ts'

const roots = ['core', 'db', 'electron', 'renderer']
const isCode = (name: string) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts')

/** Every source file of the program below `root`, read and parsed. */
export const sourcesBelow = (root: string, folders: readonly string[] = roots): Source[] =>
  folders.flatMap(folder =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter(entry => entry.isFile() && isCode(entry.name))
      .map(entry => sourceAt(root, relative(root, join(entry.parentPath, entry.name)))),
  )
