import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync, writeSync } from 'node:fs'
import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { archive as say } from '../../core/words/en/archive.ts'
import { ArchiveRefused, type Progress } from '../../db/archive/format.ts'
import { readArchive } from '../../db/archive/read.ts'
import { archiveLines } from '../../db/archive/write.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { places } from '../places.ts'
import { refuseHeld } from '../shop/hold.ts'
import { openingRefused } from '../shop/opening-refused.ts'
import { outside } from '../shop/outside.ts'

type Choice =
  | { readonly ledger: string; readonly out: string }
  | { readonly read: string; readonly into: string }

function end(code: 0 | 1 | 2, lines: readonly string[]): never {
  for (const line of lines) (code === 0 ? console.log : console.error)(line)
  process.exit(code)
}

function choice(args: string[]): Choice {
  const text = { type: 'string' } as const
  try {
    const { values } = parseArgs({ args, options: { ledger: text, out: text, read: text, into: text } })
    const { ledger, out, read, into } = values
    if (ledger && out && !read && !into) return { ledger: resolve(ledger), out: resolve(out) }
    if (read && into && !ledger && !out) return { read: resolve(read), into: resolve(into) }
    return end(2, [say.usage])
  } catch {
    return end(2, [say.usage])
  }
}

const options = { migrations: places.migrations, ...outside }
const progress: Progress = (what, done) => console.error(say.progress({ what, done }))

/** How much is gathered before it is written. */
const pieceLetters = 1 << 16

/** Writes the pieces to the file, whole or not at all, and returns what they returned. */
function writeWhole<T>(file: string, pieces: Generator<string, T>): T {
  const unfinished = `${file}.unfinished`
  const handle = openSync(unfinished, 'w', 0o600)
  try {
    let step = pieces.next()
    let held = ''
    for (; !step.done; step = pieces.next()) {
      held += step.value
      if (held.length < pieceLetters) continue
      writePiece(handle, held)
      held = ''
    }
    writePiece(handle, held)
    fsyncSync(handle)
    closeSync(handle)
    renameSync(unfinished, file)
    return step.value
  } catch (error) {
    rmSync(unfinished, { force: true })
    throw error
  }
}

function writePiece(handle: number, text: string): void {
  const bytes = Buffer.from(text)
  for (let at = 0; at < bytes.length; ) at += writeSync(handle, bytes, at)
}

function write({ ledger: file, out }: Extract<Choice, { out: string }>): void {
  if (existsSync(out)) throw new ArchiveRefused('archive.there')
  const ledger = openUntouched(file, options)
  try {
    const missing = writeWhole(out, archiveLines(ledger.read, file, progress))
    console.log(say.written({ file: out, bytes: statSync(out).size }))
    if (missing.length > 0) {
      console.error(say.missing({ count: missing.length }))
      process.exitCode = 1
    }
  } finally {
    ledger.close()
  }
}

function read({ read: archive, into }: Extract<Choice, { into: string }>): void {
  readArchive(archive, into, options, progress)
  console.log(say.read({ file: into }))
}

function told(error: unknown, file: string): string {
  if (error instanceof ArchiveRefused) return say.refusals[error.code]
  if ((error as NodeJS.ErrnoException).code === 'ENOSPC') return say.noRoom
  return openingRefused(error, { file })
}

process.umask(0o077)

/** `npm run archive`: writes a ledger that no program has open into one archive, or makes a new ledger of an archive. */
async function main(): Promise<void> {
  const asked = choice(process.argv.slice(2))
  const from = 'ledger' in asked ? asked.ledger : asked.read
  if (!existsSync(from)) end(2, [say.noFile({ file: from })])
  try {
    if ('ledger' in asked) {
      await refuseHeld(asked.ledger)
      write(asked)
    } else read(asked)
  } catch (error) {
    end(2, [told(error, from)])
  }
}

await main()
