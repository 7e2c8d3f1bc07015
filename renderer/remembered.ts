import { useSyncExternalStore } from 'react'

const changed = new EventTarget()

/** A small choice of this computer's, kept between visits; '' when none was made. */
export const remembered = (name: string): string => localStorage.getItem(`countwheel.${name}`) ?? ''

/** Keeps the choice; '' forgets it. */
export function remember(name: string, value: string): void {
  if (value) localStorage.setItem(`countwheel.${name}`, value)
  else localStorage.removeItem(`countwheel.${name}`)
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
export function useRemembered(name: string): [string, (value: string) => void] {
  const value = useSyncExternalStore(subscribe, () => remembered(name))
  return [value, next => remember(name, next)]
}
