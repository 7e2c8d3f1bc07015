import { useSyncExternalStore } from 'react'

const changed = new EventTarget()

/** Where a choice is kept: by this computer between visits, or by this window until it is closed. */
type Keeper = 'computer' | 'window'

const storage = (keeper: Keeper): Storage => (keeper === 'computer' ? localStorage : sessionStorage)

/** A small choice made here, kept between visits; '' when none was made. */
export const remembered = (name: string, keeper: Keeper = 'computer'): string =>
  storage(keeper).getItem(`countwheel.${name}`) ?? ''

/** Keeps the choice; '' forgets it. */
export function remember(name: string, value: string, keeper: Keeper = 'computer'): void {
  if (value) storage(keeper).setItem(`countwheel.${name}`, value)
  else storage(keeper).removeItem(`countwheel.${name}`)
  changed.dispatchEvent(new Event('change'))
}

function subscribe(listener: () => void): () => void {
  changed.addEventListener('change', listener)
  window.addEventListener('storage', listener)
  return () => {
    changed.removeEventListener('change', listener)
    window.removeEventListener('storage', listener)
  }
}

/** The remembered choice and its setter, the same in every part that asks for it. */
export function useRemembered(name: string, keeper: Keeper = 'computer'): [string, (value: string) => void] {
  const value = useSyncExternalStore(subscribe, () => remembered(name, keeper))
  return [value, next => remember(name, next, keeper)]
}
