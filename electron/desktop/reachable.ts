/** A window or the part of a display that windows may use, in pixels. */
export interface Area {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** At least this much of a window's top must be on a display, in pixels, so that it can be taken hold of. */
const hold = { width: 160, height: 40 } as const

/** True when the window's top edge can be seen and taken hold of on one of the displays. */
export function isReachable(window: Area, displays: readonly Area[]): boolean {
  return displays.some(area => {
    const across = Math.min(window.x + window.width, area.x + area.width) - Math.max(window.x, area.x)
    return across >= hold.width && window.y >= area.y && window.y <= area.y + area.height - hold.height
  })
}
