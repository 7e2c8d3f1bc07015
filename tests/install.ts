import { spawnSync } from 'node:child_process'
import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'

/** The file of a program on the search path, or nothing. */
export function onPath(program: string): string | undefined {
  const files = (process.env.PATH ?? '').split(delimiter).map(folder => join(folder, program))
  return files.find(file => {
    try {
      accessSync(file, constants.X_OK)
      return true
    } catch {
      return false
    }
  })
}

/** Runs a program to its end, its words on standard error; true when it went well. */
export function runs(program: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): boolean {
  const minutes = 10
  const { status } = spawnSync(program, args, {
    stdio: ['ignore', 2, 2],
    timeout: minutes * 60_000,
    env: { ...process.env, ...env },
  })
  return status === 0
}

/** Installs system packages where that is allowed: as root on a Debian-like system. False where it is not. */
export function aptInstall(packages: readonly string[]): boolean {
  const apt = onPath('apt-get')
  if (!apt || process.getuid?.() !== 0) return false
  console.error(`Installing ${packages.join(', ')} for the tests …`)
  const waiting = ['-o', 'DPkg::Lock::Timeout=300', '-q']
  const env = { DEBIAN_FRONTEND: 'noninteractive' }
  const install = () => runs(apt, [...waiting, 'install', '-y', '--no-install-recommends', ...packages], env)
  return install() || (runs(apt, [...waiting, 'update'], env) && install())
}
