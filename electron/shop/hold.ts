import { createHash } from 'node:crypto'
import { once } from 'node:events'
import { existsSync, lstatSync, mkdirSync, realpathSync, rmSync } from 'node:fs'
import { connect, createServer, type Server } from 'node:net'
import { tmpdir } from 'node:os'
import { basename, dirname, join, resolve } from 'node:path'
import { text } from 'node:stream/consumers'

/** A ledger that this process has open: others who want it are told where it is. */
export interface Hold {
  release(): void
}

/** The ledger is open in another process; `address` is a fresh address to it where it is served on loopback. */
export class LedgerHeld extends Error {
  readonly address: string | undefined
  constructor(address: string | undefined) {
    super('the ledger is open in another process')
    this.address = address
  }
}

const waitMs = 2000

/** A folder that only this user may enter, so that nobody else can answer in a ledger's name. */
function ownFolder(): string {
  const user = process.getuid?.()
  const folder = join(tmpdir(), `countwheel-${user}`)
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const found = lstatSync(folder)
  if (!found.isDirectory() || found.uid !== user || (found.mode & 0o077) !== 0) {
    throw new Error(`${folder} does not belong to this user alone`)
  }
  return folder
}

/** The folder's true name, whichever way it was reached; its given name where it does not exist yet. */
function trueName(folder: string): string {
  return existsSync(folder) ? realpathSync(folder) : folder
}

/** One meeting place per ledger file. */
function meetingPlace(file: string): string {
  const folder = trueName(dirname(resolve(file)))
  const name = createHash('sha256')
    .update(join(folder, basename(file)))
    .digest('hex')
    .slice(0, 16)
  return process.platform === 'win32' ? `\\\\.\\pipe\\countwheel-${name}` : join(ownFolder(), name)
}

/** What the holder answers, or nothing where nobody holds the ledger (a socket left by a killed process is nobody). */
async function answerAt(place: string): Promise<string | undefined> {
  const socket = connect(place)
  socket.setTimeout(waitMs, () => socket.destroy())
  try {
    await once(socket, 'connect')
  } catch {
    return undefined
  }
  return text(socket).catch(() => '')
}

async function listen(place: string, answer: () => string): Promise<Server> {
  const server = createServer(socket => socket.on('error', () => socket.destroy()).end(answer()))
  server.listen(place)
  await once(server, 'listening')
  server.unref()
  return server
}

/** Throws `LedgerHeld` when another process of this user has the ledger open. */
export async function refuseHeld(file: string): Promise<void> {
  const answer = await answerAt(meetingPlace(file))
  if (answer !== undefined) throw new LedgerHeld(answer || undefined)
}

/**
 * Holds the ledger for this process until released; the hold of a killed process is nobody's. `onAsked` is called
 * whenever another process wants the ledger and returns a fresh address to hand out, or '' where there is none.
 * Throws `LedgerHeld`. The hold is a courtesy to people: what guards the data is SQLite's own locking.
 */
export async function holdLedger(file: string, onAsked: () => string): Promise<Hold> {
  await refuseHeld(file)
  const place = meetingPlace(file)
  if (process.platform !== 'win32') rmSync(place, { force: true })
  const server = await listen(place, onAsked)
  return { release: () => void server.close() }
}
