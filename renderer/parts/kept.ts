import { useEffect, useState } from 'react'

const key = (name: string) => `countwheel.kept.${name}`

function read<T>(name: string, initial: T): T {
  const text = sessionStorage.getItem(key(name))
  return text === null ? initial : (JSON.parse(text) as T)
}

/**
 * State that waits for its page when the person is called away: kept in this window under `name` until `forgetKept`. Without a name it
 * is ordinary state.
 */
export function useKept<T>(name: string | undefined, initial: T | (() => T)) {
  const start = () => (initial instanceof Function ? initial() : initial)
  const state = useState<T>(() => (name === undefined ? start() : read(name, start())))
  const [value] = state
  useEffect(() => {
    if (name !== undefined) sessionStorage.setItem(key(name), JSON.stringify(value))
  }, [name, value])
  return state
}

/** Forgets everything kept under names that begin with `prefix`. */
export function forgetKept(prefix: string): void {
  const names = Array.from({ length: sessionStorage.length }, (_, index) => sessionStorage.key(index) ?? '')
  for (const name of names) if (name.startsWith(key(prefix))) sessionStorage.removeItem(name)
}
