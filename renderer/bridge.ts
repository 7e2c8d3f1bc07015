import type { Bridge } from '../electron/desktop/bridge.ts'

declare global {
  interface Window {
    /** There in the desktop window, absent in a browser. */
    readonly countwheel?: Bridge
  }
}

/** What the desktop window offers beyond a browser, or nothing in a browser. */
export const bridge: Bridge | undefined = window.countwheel
