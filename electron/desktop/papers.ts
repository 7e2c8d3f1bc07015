import { mkdtempSync, rmSync } from 'node:fs'
import { rename, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { app, type BrowserWindow, dialog, shell } from 'electron'
import { start } from '../../core/words/en/start.ts'
import type { Handle } from '../server/hosts/limits.ts'
import type { PaperOutcome } from './bridge.ts'
import { origin } from './host.ts'

/** A paper as the handler gives it out. */
interface Paper {
  readonly name: string
  readonly bytes: Uint8Array
}

const isPaperPath = (path: unknown): path is string =>
  typeof path === 'string' && /^\/papers\/[\w-]+(\/[\w-]+)*\.pdf(\?[\w=&-]*)?$/.test(path)

/** The name the handler gave the paper, without anything a file name cannot have, or the last part of its path. */
function paperName(response: Response, path: string): string {
  const given = /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '')?.[1]
  return (given ?? basename(path.split('?')[0] ?? path)).replace(/[^\w .-]+/g, '-')
}

/** The paper at `path`, or nothing where there is none. */
async function paperAt(handle: Handle, path: unknown): Promise<Paper | undefined> {
  if (!isPaperPath(path)) return undefined
  const response = await handle(new Request(`${origin}${path}`))
  if (!response.ok) return undefined
  return { name: paperName(response, path), bytes: new Uint8Array(await response.arrayBuffer()) }
}

/** Writes beside the target first, so that a full disk leaves no half paper under the chosen name. */
async function write(target: string, bytes: Uint8Array): Promise<void> {
  const part = `${target}.part`
  try {
    await writeFile(part, bytes, { mode: 0o600 })
    await rename(part, target)
  } catch (error) {
    await rm(part, { force: true })
    throw error
  }
}

/** Saves the paper where the person says. */
export async function savePaper(window: BrowserWindow, handle: Handle, path: unknown): Promise<PaperOutcome> {
  const paper = await paperAt(handle, path)
  if (!paper) return 'failed'
  const { canceled, filePath } = await dialog.showSaveDialog(window, {
    title: start.native.savePaper,
    defaultPath: join(app.getPath('documents'), paper.name),
    filters: [{ name: start.native.pdf, extensions: ['pdf'] }],
  })
  if (canceled || !filePath) return 'cancelled'
  return write(filePath, paper.bytes).then(
    () => 'done',
    () => 'failed',
  )
}

let folder: string | undefined

/** One folder for this run's papers, for this user only, taken away when the ledger is closed. */
function printFolder(): string {
  if (folder) return folder
  const made = mkdtempSync(join(tmpdir(), 'countwheel-paper-'))
  app.once('will-quit', () => rmSync(made, { recursive: true, force: true }))
  folder = made
  return made
}

/** Opens the paper in the computer's own PDF program, to be looked at and printed. */
export async function printPaper(handle: Handle, path: unknown): Promise<PaperOutcome> {
  const paper = await paperAt(handle, path)
  if (!paper) return 'failed'
  try {
    const file = join(printFolder(), paper.name)
    await write(file, paper.bytes)
    return (await shell.openPath(file)) === '' ? 'done' : 'failed'
  } catch {
    return 'failed'
  }
}
