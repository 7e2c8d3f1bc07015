import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { places } from '../../places.ts'

const sources = ['core', 'db', 'electron', 'renderer', 'vite.config.ts', 'package.json', 'package-lock.json']

const built = [join(places.pages, 'index.html'), places.main, places.preload, places.host]

/** When a file, or the newest file below a folder, was changed (ms since 1970); 0 where there is nothing. */
function changedMs(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false })
  if (!found?.isDirectory()) return found?.mtimeMs ?? 0
  return Math.max(0, ...readdirSync(path).map(name => changedMs(join(path, name))))
}

/** True when something built is missing or older than anything it is built from. */
export function isStale(sourcePaths: readonly string[], builtPaths: readonly string[]): boolean {
  const oldest = Math.min(...builtPaths.map(changedMs))
  return Math.max(...sourcePaths.map(changedMs)) > oldest
}

/** True when the application has to be built before it can start. */
export const needsBuild = (): boolean =>
  isStale(
    sources.map(path => join(places.root, path)),
    built,
  )

/** Builds everything; true when it went well. What goes wrong is shown on standard error. */
export async function build(): Promise<boolean> {
  const vite = join(places.root, 'node_modules/vite/bin/vite.js')
  const child = spawn(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: places.root,
    stdio: ['ignore', 2, 2],
  })
  const [code] = await once(child, 'exit')
  return code === 0
}
