import { describe, expect, test } from 'vitest'
import { isReachable } from '../../../electron/desktop/reachable.ts'

const left = { x: 0, y: 0, width: 1920, height: 1040 }
const right = { x: 1920, y: 200, width: 1280, height: 800 }
const window = (x: number, y: number, width = 1280, height = 860) => ({ x, y, width, height })

describe('a remembered window is used again', () => {
  test('while its top edge can be taken hold of on one of the displays', () => {
    expect(isReachable(window(100, 50), [left])).toBe(true)
    expect(isReachable(window(2000, 300), [left, right])).toBe(true)
    expect(isReachable(window(-1120, 0), [left]), 'just enough of it').toBe(true)
    expect(isReachable(window(100, 1000), [left]), 'its title still on the display').toBe(true)
  })

  test('not when its display is gone, or too little of it is left to take hold of', () => {
    expect(isReachable(window(2000, 300), [left]), 'display gone').toBe(false)
    expect(isReachable(window(-1121, 0), [left]), 'one pixel too few').toBe(false)
    expect(isReachable(window(100, 1001), [left]), 'below the display').toBe(false)
    expect(isReachable(window(100, -1), [left]), 'its title above the display').toBe(false)
    expect(isReachable(window(100, 50), []), 'no display').toBe(false)
  })
})
