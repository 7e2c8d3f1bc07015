import type { ReactNode } from 'react'
import { useShop } from '../shop.tsx'

interface LikelyProps<T> {
  readonly title: string
  readonly found: readonly T[]
  readonly keyOf: (one: T) => number
  readonly show: (one: T) => ReactNode
  /** What is chosen by taking one for the one on record. */
  readonly same: (one: T) => string
  readonly onSame: (one: T) => void
  readonly other: string
  /** Those shown were looked at and are others. */
  readonly onOther: () => void
}

/** What on record may be the one being typed: each can be taken for it, or all of them are said to be others. */
export function Likely<T>({ title, found, keyOf, show, same, onSame, other, onOther }: LikelyProps<T>) {
  if (found.length === 0) return null
  return (
    <fieldset className="note likely">
      <legend className="hidden-words">{title}</legend>
      <p aria-hidden="true">
        <b>{title}</b>
      </p>
      <ul>
        {found.map(one => (
          <li key={keyOf(one)}>
            <span>{show(one)}</span>
            <button type="button" className="second" onClick={() => onSame(one)}>
              {same(one)}
            </button>
          </li>
        ))}
      </ul>
      <button type="button" className="plain" onClick={onOther}>
        {other}
      </button>
    </fieldset>
  )
}

/** One line of what tells who or what it is: a lead, and the rest that is known. */
export function LikelyLine({ lead, rest }: { lead: string; rest: readonly (string | null)[] }) {
  const known = rest.filter(Boolean).join(' · ')
  return (
    <>
      <b>{lead}</b> {known && <small className="quiet">{known}</small>}
    </>
  )
}

/** The words of likeness. */
export const useLikelyWords = () => useShop().words.register.likely
