import './turn-pages.css'
import { useEffect, useRef } from 'react'
import { useLocation } from 'wouter'
import { useShop } from '../shop.tsx'

interface TurnPagesProps {
  /** Where the page before this one is; null on the first. */
  readonly previous: string | null
  /** Where the page after this one is; null on the last. */
  readonly next: string | null
  /** Tells one page from another: when it changes after a turn, the first line takes the focus. */
  readonly page: string | number | undefined
}

/** Puts the focus on the first line of the page turned to. */
function useFirstLine(page: TurnPagesProps['page']) {
  const turning = useRef(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the effect follows each change of page
  useEffect(() => {
    if (!turning.current) return
    turning.current = false
    const first = document.querySelector<HTMLElement>('main a.open') ?? document.querySelector('main h1')
    first?.focus({ preventScroll: true })
    window.scrollTo(0, 0)
  }, [page])
  return turning
}

/** Leafs through a long list: two buttons, and Alt with the page keys. Nothing where the list has one page. */
export function TurnPages({ previous, next, page }: TurnPagesProps) {
  const { turn } = useShop().words.register
  const [, navigate] = useLocation()
  const turning = useFirstLine(page)
  const turnTo = (place: string | null) => {
    if (place === null) return
    turning.current = true
    navigate(place)
  }
  const byKey = useRef(turnTo)
  byKey.current = turnTo
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (!event.altKey || (event.key !== 'PageUp' && event.key !== 'PageDown')) return
      event.preventDefault()
      byKey.current(event.key === 'PageUp' ? previous : next)
    }
    window.addEventListener('keydown', pressed)
    return () => window.removeEventListener('keydown', pressed)
  }, [previous, next])
  if (previous === null && next === null) return null
  const button = (words: string, key: string, place: string | null) => (
    <button
      type="button"
      className="plain"
      aria-keyshortcuts={`Alt+${key}`}
      disabled={place === null}
      onClick={() => turnTo(place)}
    >
      {words}
    </button>
  )
  return (
    <nav className="turn-pages" aria-label={turn.label}>
      {button(turn.previous, 'PageUp', previous)}
      {button(turn.next, 'PageDown', next)}
      <small className="quiet">{turn.keys}</small>
    </nav>
  )
}
