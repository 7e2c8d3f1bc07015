import { appendFileSync } from 'node:fs'

/** What the desktop program asked of Electron, as one line each in the file that `STAND_IN_NOTES` names. */
export interface Note {
  readonly what: string
  readonly with: unknown
}

/** Writes down that the program asked for something. */
export function note(what: string, given: unknown): void {
  const file = process.env.STAND_IN_NOTES
  if (!file) throw new Error('STAND_IN_NOTES names no file')
  appendFileSync(file, `${JSON.stringify({ what, with: given } satisfies Note)}\n`)
}
