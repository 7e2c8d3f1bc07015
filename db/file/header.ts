import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import { LedgerRefused } from './ledger-refused.ts'

/** "CWlg" in the SQLite header: how a ledger is told from any other SQLite file. */
export const applicationId = 0x43576c67

const headerBytes = 100

/** A file's first bytes and its whole length; null where there is no such file. Throws LedgerRefused where it cannot be read. */
function readHeader(file: string): { header: Buffer; size: number } | null {
  let handle: number
  try {
    handle = openSync(file, 'r')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw new LedgerRefused('ledger.noAccess')
  }
  try {
    const stat = fstatSync(handle)
    if (!stat.isFile()) throw new LedgerRefused('ledger.notAFile')
    const header = Buffer.alloc(headerBytes)
    readSync(handle, header, 0, headerBytes, 0)
    return { header, size: stat.size }
  } finally {
    closeSync(handle)
  }
}

const isSqlite = (header: Buffer, size: number) =>
  size >= headerBytes && header.toString('latin1', 0, 16) === 'SQLite format 3\0'

/**
 * Looks at the file's own header before SQLite touches it (SQLite file format, “The Database Header”): refuses what is no
 * ledger, and what cannot be read. Returns whether there is anything in the file yet. Where a log stands beside it (`logged`), what
 * the file is may stand there still.
 */
export function checkHeader(file: string, logged = false): 'new' | 'ledger' {
  const found = readHeader(file)
  if (found === null || found.size === 0) return 'new'
  const { header, size } = found
  const isOurs = logged || header.readUInt32BE(68) === applicationId
  if (!isSqlite(header, size) || !isOurs) throw new LedgerRefused('ledger.foreign')
  return 'ledger'
}

/**
 * True where the file has fewer pages than it says: the header counts them when its change counter agrees with the version that
 * wrote it. Only of a file without a log beside it, for the log may have the pages that are not in the file yet.
 */
export function isCutShort(file: string): boolean {
  const { header, size } = readHeader(file) ?? { header: Buffer.alloc(headerBytes), size: 0 }
  const pageSize = header.readUInt16BE(16) === 1 ? 65536 : header.readUInt16BE(16)
  const counted = header.readUInt32BE(24) === header.readUInt32BE(92)
  return counted && size < header.readUInt32BE(28) * pageSize
}

/** True where the header says that the file is written through a log (read and write version 2), as every opened ledger is. */
export function keepsALog(file: string): boolean {
  const found = readHeader(file)
  return found !== null && found.header[18] === 2 && found.header[19] === 2
}
