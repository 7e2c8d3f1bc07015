import { coded } from './coded.ts'
import type { Needs, Sentences } from './sentence.ts'
import { vocabulary } from './vocabulary.ts'

const { notLookedAt } = vocabulary

const plain: Readonly<Record<string, string>> = { true: 'ticked', false: 'not ticked', unknown: notLookedAt }

/** What the whole numbers of a record count, by field. */
const counted: Readonly<Record<string, string>> = {
  heightMm: 'mm',
  widthMm: 'mm',
  depthMm: 'mm',
  weightG: 'g',
}

const shown = ({ field, now }: Needs<'field' | 'now'>): string => {
  const value = String(now)
  const unit = counted[String(field)]
  return coded[String(field)]?.[value] ?? plain[value] ?? (unit ? `${value} ${unit}` : value)
}

/** What is said when somebody else changed a record that is open in two places. */
export const meanwhile = {
  'record.changedMeanwhile': (v: Needs<'field' | 'now'>) =>
    `Meanwhile somebody ${v.now === '' ? 'emptied this' : `changed this to “${shown(v)}”`}. What stands in the field now is kept when you send again.`,
} satisfies Sentences
