import { createHash } from 'node:crypto'
import { closeSync, openSync, readSync } from 'node:fs'
import { ArchiveRefused, type End, type Head, type Line } from './format.ts'

const chunkBytes = 1 << 20
const lineEnd = 0x0a

/** The lines of a file, without their ends, read a piece at a time; what stands after the last end is a line too. */
function* linesOf(file: string): Generator<Buffer> {
  const handle = openSync(file, 'r')
  try {
    let held: Buffer[] = []
    for (;;) {
      const chunk = Buffer.alloc(chunkBytes)
      const length = readSync(handle, chunk)
      if (length === 0) break
      let from = 0
      for (let at = chunk.indexOf(lineEnd); at >= 0 && at < length; at = chunk.indexOf(lineEnd, from)) {
        yield Buffer.concat([...held, chunk.subarray(from, at)])
        held = []
        from = at + 1
      }
      held.push(chunk.subarray(from, length))
    }
    const rest = Buffer.concat(held)
    if (rest.length > 0) yield rest
  } finally {
    closeSync(handle)
  }
}

function parsed(line: Buffer): Line {
  try {
    return JSON.parse(line.toString('utf8')) as Line
  } catch {
    throw new ArchiveRefused('archive.damaged')
  }
}

function headOf(line: Buffer | undefined): Head {
  const foreign = () => new ArchiveRefused('archive.foreign')
  if (!line?.toString('latin1', 0, 40).startsWith('{"countwheel":"archive"')) throw foreign()
  const head = parsed(line)
  if (!('countwheel' in head) || !Number.isInteger(head.shape) || head.shape < 1) throw foreign()
  if (head.version !== 1) throw new ArchiveRefused('archive.newer')
  return head
}

/** Reads the archive through once and returns its head; refuses one that is none, is cut short or was changed. */
export function checkedHead(file: string): Head {
  const hash = createHash('sha256')
  let head: Head | undefined
  let last: Buffer | undefined
  let count = 0
  for (const line of linesOf(file)) {
    head ??= headOf(line)
    if (last) {
      hash.update(last).update('\n')
      count += 1
    }
    last = line
  }
  if (!head || !last) throw new ArchiveRefused('archive.foreign')
  const end = parsed(last) as Partial<End>
  if (end.end !== count || end.sha256 !== hash.digest('hex')) throw new ArchiveRefused('archive.damaged')
  return head
}

/** The rows and files of an archive, in order. */
export function* contentLines(file: string): Generator<Line> {
  for (const line of linesOf(file)) {
    const read = parsed(line)
    if ('table' in read || 'bytes' in read) yield read
  }
}
