import type { MediaType } from '../../core/photograph/picture.ts'

/*
 * An archive is text, one JSON value to a line: a head, the rows of every table, photographs and papers, an end. Whatever may become
 * of this program, any other can read it.
 */

/** The first line: what the file is and by which migration its tables are shaped. */
export interface Head {
  readonly countwheel: 'archive'
  readonly version: 1
  readonly shape: number
}

export type Value = string | number | null

/** One row of a table. */
export interface RowLine {
  readonly table: string
  readonly row: Readonly<Record<string, Value>>
}

/** One photograph with its bytes as base64, or without them where they were not beside the ledger. */
export interface PhotographLine {
  readonly photograph: string
  readonly mediaType: MediaType
  readonly bytes: string | null
}

/** One paper, issued or handed out, as it was first drawn, its bytes as base64, or without them where they were not beside the ledger. */
export interface PaperLine {
  readonly paper: string
  readonly bytes: string | null
}

/** A file that stands beside the ledger. */
export type FileLine = PhotographLine | PaperLine

/** The last line: how many lines came before it, and the SHA-256 of them with their line ends. */
export interface End {
  readonly end: number
  readonly sha256: string
}

export type Line = Head | RowLine | FileLine | End

/** Why an archive was not written or not read; each code has a sentence in the catalogue. */
export type ArchiveRefusal =
  | 'archive.foreign'
  | 'archive.damaged'
  | 'archive.newer'
  | 'archive.unfit'
  | 'archive.there'

/** Nothing was written. */
export class ArchiveRefused extends Error {
  readonly code: ArchiveRefusal

  constructor(code: ArchiveRefusal) {
    super(code)
    this.code = code
  }
}

/** Says how far the work is: of which table or files, how many so far. */
export type Progress = (what: string, done: number) => void
