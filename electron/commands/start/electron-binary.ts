import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { places } from '../../places.ts'

/** How long to wait for Electron to be fetched, in seconds. */
export const fetchSeconds = 20

const packageFolder = join(places.root, 'node_modules/electron')

/**
 * Electron's program where it has been fetched: looked for by file, as loading the package would start a download.
 * `ELECTRON_OVERRIDE_DIST_PATH` is Electron's own variable for a copy kept elsewhere.
 */
export function electronBinary(folder: string = packageFolder, env = process.env): string | undefined {
  const note = join(folder, 'path.txt')
  const name = existsSync(note) ? readFileSync(note, 'utf8').trim() : 'electron'
  const binary = join(env.ELECTRON_OVERRIDE_DIST_PATH ?? join(folder, 'dist'), name)
  return existsSync(binary) ? binary : undefined
}

/** Fetches Electron by its own installer, which fails at once offline; nothing after `fetchSeconds`. */
export async function fetchElectron(): Promise<string | undefined> {
  const installer = join(packageFolder, 'install.js')
  if (!existsSync(installer)) return undefined
  const child = spawn(process.execPath, [installer], {
    stdio: 'ignore',
    timeout: fetchSeconds * 1000,
    killSignal: 'SIGKILL',
  })
  await once(child, 'exit')
  return electronBinary()
}

/** Whether windows can be shown: always on macOS and Windows, elsewhere where there is an X or Wayland display. */
export function hasDisplay(platform: NodeJS.Platform = process.platform, env = process.env): boolean {
  return platform === 'darwin' || platform === 'win32' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY)
}
