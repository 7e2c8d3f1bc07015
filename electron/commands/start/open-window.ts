import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { places } from '../../places.ts'
import type { ShopChoice } from '../../shop/open-shop.ts'
import { whenAskedToEnd } from './ending.ts'

/** The main process ends with this code when it has said on standard error why the ledger was not opened. */
export const refusedCode = 3

/** A shop choice as switches of the desktop program. */
const switches = ({ ledger, demo }: ShopChoice) => [
  ...(ledger ? [`--ledger=${ledger}`] : []),
  ...(demo ? ['--demo'] : []),
]

/**
 * Opens the desktop window and waits until it is closed. Returns the exit code, or nothing where the window never
 * opened; the program's first line says that it did.
 */
export async function openWindow(binary: string, choice: ShopChoice): Promise<number | undefined> {
  const child = spawn(binary, [places.root, ...switches(choice)], { stdio: ['ignore', 'pipe', 'inherit'] })
  let opened = false
  child.on('error', () => undefined)
  child.stdout.on('data', (line: Buffer) => {
    opened = true
    process.stdout.write(line)
  })
  whenAskedToEnd(signal => child.kill(signal))
  const [code] = (await once(child, 'close')) as [number | null]
  if (code === refusedCode) return 1
  return opened ? (code ?? 1) : undefined
}
