import { fee } from './fee.ts'
import { labour } from './labour.ts'
import { outside } from './outside.ts'
import { part } from './part.ts'

/** Every kind of line. A new kind is one file here and one entry in this registry. */
export const lineKinds = { labour, part, outside, fee } as const

export type LineKind = keyof typeof lineKinds

/** Whether `text` names a kind of line. */
export const isLineKind = (text: string): text is LineKind => Object.hasOwn(lineKinds, text)
