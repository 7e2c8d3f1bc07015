import { existsSync } from 'node:fs'
import { homedir } from 'node:os'
import { dirname, join } from 'node:path'

/** The nearest folder upwards that has the application's package.json: the same from sources, from dist/ and packaged. */
function rootFrom(folder: string): string {
  if (existsSync(join(folder, 'package.json'))) return folder
  const parent = dirname(folder)
  if (parent === folder) throw new Error('package.json is missing above the program')
  return rootFrom(parent)
}

const root = rootFrom(import.meta.dirname)

/** Where the application's own files are. */
export const places = {
  root,
  pages: join(root, 'dist/client'),
  migrations: join(root, 'migrations'),
  assets: join(root, 'assets'),
  main: join(root, 'dist/main/main.js'),
  preload: join(root, 'dist/preload/preload.cjs'),
  host: join(root, 'dist/host/serve.js'),
} as const

/**
 * The folder for the user's ledgers, by the platform's custom: `$XDG_DATA_HOME` or ~/.local/share (XDG Base
 * Directory Specification 0.8), ~/Library/Application Support, or %APPDATA%.
 */
export function dataFolder(
  platform: NodeJS.Platform = process.platform,
  env: NodeJS.ProcessEnv = process.env,
  home: string = homedir(),
): string {
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Countwheel')
  if (platform === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Countwheel')
  // The specification: a relative path in the variable is invalid and counts as unset.
  const named = env.XDG_DATA_HOME?.startsWith('/') ? env.XDG_DATA_HOME : join(home, '.local', 'share')
  return join(named, 'countwheel')
}

/** The shop's ledger where none is named. */
export const usualLedger = (): string => join(dataFolder(), 'shop.countwheel')

/** The demonstration shop's ledger where none is named: written anew at each start. */
export const demoLedgerFile = (): string => join(dataFolder(), 'demonstration.countwheel')
