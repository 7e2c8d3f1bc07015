import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import { LedgerRefused } from './ledger-refused.ts'

/** "CWlg" in the SQLite header: how a ledger is told from any other SQLite file. */
export const applicationId = 0x43576c67

const headerBytes = 100

/**
 * Looks at the file's own header before SQLite touches it (SQLite file format, “The Database Header”): refuses what is no
 * ledger, what is cut short, and what cannot be read. Returns whether there is anything in the file yet.
 */
export function checkHeader(file: string): 'new' | 'ledger' {
  const bytes = readHeader(file)
  if (bytes === null) return 'new'
  const { header, size } = bytes
  if (size === 0) return 'new'
  if (size < headerBytes || header.toString('latin1', 0, 16) !== 'SQLite format 3\0')
    throw new LedgerRefused('ledger.foreign')
  if (header.readUInt32BE(68) !== applicationId) throw new LedgerRefused('ledger.foreign')
  if (isCutShort(header, size)) throw new LedgerRefused('ledger.damaged')
  return 'ledger'
}

/** The header counts the pages when its change counter agrees with the version that wrote it; WAL pages may not be in the file yet. */
function isCutShort(header: Buffer, size: number): boolean {
  const pageSize = header.readUInt16BE(16) === 1 ? 65536 : header.readUInt16BE(16)
  const counted = header.readUInt32BE(24) === header.readUInt32BE(92)
  return counted && size < header.readUInt32BE(28) * pageSize
}

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
