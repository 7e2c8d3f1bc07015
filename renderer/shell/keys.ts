import { useEffect } from 'react'
import { useLocation } from 'wouter'
import { bridge } from '../bridge.ts'
import { pageNames } from '../pages.ts'
import { remember, remembered } from '../remembered.ts'

/** Single-key shortcuts may be turned off (WCAG 2.1.4). */
export const singleKeys = { name: 'single-keys', off: 'off' } as const

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('input, textarea, select, [contenteditable], dialog') !== null

/** A figure that was meant for a field beside the one in focus does not turn the page away from a form. */
const inForm = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('form') !== null

/** What is asked already is answered first. */
const inDialog = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('dialog') !== null

const focusOn = (selector: string): boolean => {
  const control = document.querySelector<HTMLElement>(selector)
  control?.focus()
  if (control instanceof HTMLInputElement) control.select()
  return control !== null
}

/** Puts the cursor into the find box. */
export const goToFind = () => focusOn('#find')

const goToEntryLine = () => focusOn('.entry-line :is(input, select, textarea, button)')

/** From automatic to the other light than now, and back and forth from there. */
export function changeLight(): void {
  const dark = document.documentElement.dataset.theme
    ? document.documentElement.dataset.theme === 'lamp'
    : matchMedia('(prefers-color-scheme: dark)').matches
  remember('light', dark ? 'light' : 'lamp')
}

interface Doers {
  readonly turnTo: (page: number) => void
  readonly help: () => void
  /** Asks who is at the counter. */
  readonly who: () => void
}

/** What a key does here, or nothing. A second Ctrl F in the find box is left to the browser. */
function doerFor(event: KeyboardEvent, { turnTo, help, who }: Doers): (() => unknown) | undefined {
  const { key, code, altKey, target } = event
  const command = event.ctrlKey || event.metaKey
  const figure = /^Digit([1-7])$/.exec(code)?.[1]
  if (altKey && !command && figure) return () => turnTo(Number(figure))
  if (altKey && !command && code === 'Digit0') return inDialog(target) ? undefined : who
  if (command && !altKey && key === 'f')
    return target instanceof Element && target.id === 'find' ? undefined : goToFind
  if (command || altKey || isTyping(target) || remembered(singleKeys.name) === singleKeys.off)
    return undefined
  if (/^[1-7]$/.test(key)) return inForm(target) ? undefined : () => turnTo(Number(key))
  if (key === '0') return inForm(target) ? undefined : who
  return { '/': goToFind, '.': goToEntryLine, '?': help }[key]
}

/** The keys that work on every page, and the commands of the desktop window's menu. */
export function useKeys({ help, who }: Omit<Doers, 'turnTo'>): void {
  const [, navigate] = useLocation()
  useEffect(() => {
    const turnTo = (page: number) => navigate(`/${pageNames[page - 1]}`)
    const pressed = (event: KeyboardEvent) => {
      const act = doerFor(event, { turnTo, help, who })
      if (!act || event.defaultPrevented) return
      event.preventDefault()
      act()
    }
    window.addEventListener('keydown', pressed)
    const forget = bridge?.onMenu(command => {
      if (command === 'find') goToFind()
      else if (command === 'theme') changeLight()
      else navigate(`/${command}`)
    })
    return () => {
      window.removeEventListener('keydown', pressed)
      forget?.()
    }
  }, [navigate, help, who])
}
