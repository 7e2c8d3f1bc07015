import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { hasDisplay } from './electron-binary.ts'

/** The command that opens an address in the user's browser; nothing where there is none. */
export function browserCommand(
  platform: NodeJS.Platform = process.platform,
  env: NodeJS.ProcessEnv = process.env,
): readonly string[] | undefined {
  if (platform === 'darwin') return ['open']
  if (platform === 'win32') return ['rundll32', 'url.dll,FileProtocolHandler']
  const folders = (env.PATH ?? '').split(delimiter)
  // Without a display xdg-open would put a text browser over the printed address.
  const opens = hasDisplay(platform, env) && folders.some(folder => existsSync(join(folder, 'xdg-open')))
  return opens ? ['xdg-open'] : undefined
}

/** Opens `address` in the user's browser where there is one; a browser that will not start is no problem of ours. */
export function openBrowser(address: string): void {
  const [command, ...args] = browserCommand() ?? []
  if (!command) return
  const child = spawn(command, [...args, address], { detached: true, stdio: 'ignore' })
  child.on('error', () => undefined)
  child.unref()
}
