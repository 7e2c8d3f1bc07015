import { readFileSync } from 'node:fs'
import { registerHooks } from 'node:module'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

// Called as Electron's program is: with the application's folder, then its switches.
const folder = process.argv[2] ?? ''
const { main } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { main: string }
const standIn = new URL('./electron.ts', import.meta.url).href

registerHooks({
  resolve: (name, context, next) =>
    name === 'electron' ? { url: standIn, shortCircuit: true } : next(name, context),
})
await import(pathToFileURL(join(folder, main)).href)
