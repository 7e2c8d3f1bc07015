import { existsSync, mkdirSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { browserCommand } from '../../electron/commands/start/browser.ts'
import { isStale } from '../../electron/commands/start/build.ts'
import { electronBinary, hasDisplay } from '../../electron/commands/start/electron-binary.ts'
import { dataFolder, places } from '../../electron/places.ts'
import { temporaryFolder } from './temporary.ts'

describe('where things are', () => {
  test('the application’s own files are found from its package', () => {
    expect(existsSync(join(places.root, 'package.json'))).toBe(true)
  })

  // XDG Base Directory Specification 0.8: a relative path in the variable is invalid and ignored.
  test('ledgers are kept where the platform keeps a user’s data', () => {
    const home = '/home/anna'
    expect(dataFolder('linux', {}, home)).toBe('/home/anna/.local/share/countwheel')
    expect(dataFolder('linux', { XDG_DATA_HOME: '/data' }, home)).toBe('/data/countwheel')
    expect(dataFolder('linux', { XDG_DATA_HOME: 'data' }, home)).toBe('/home/anna/.local/share/countwheel')
    expect(dataFolder('darwin', {}, home)).toBe('/home/anna/Library/Application Support/Countwheel')
    expect(dataFolder('win32', { APPDATA: '/roaming' }, home)).toBe(join('/roaming', 'Countwheel'))
  })
})

describe('where the ledger can be shown', () => {
  test('a display is X or Wayland, and always there on macOS and Windows', () => {
    expect(hasDisplay('linux', {})).toBe(false)
    expect(hasDisplay('linux', { DISPLAY: ':0' })).toBe(true)
    expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true)
    expect(hasDisplay('darwin', {})).toBe(true)
    expect(hasDisplay('win32', {})).toBe(true)
  })

  test('Electron is found by its files alone', () => {
    const folder = temporaryFolder()
    expect(electronBinary(folder, {})).toBeUndefined()
    writeFileSync(join(folder, 'path.txt'), 'inside/program')
    expect(electronBinary(folder, {})).toBeUndefined()
    mkdirSync(join(folder, 'dist/inside'), { recursive: true })
    writeFileSync(join(folder, 'dist/inside/program'), '')
    expect(electronBinary(folder, {})).toBe(join(folder, 'dist/inside/program'))
  })

  test('a browser is opened by the platform’s own command, and on Linux only where there is a display', () => {
    const folder = temporaryFolder()
    expect(browserCommand('darwin', {})).toEqual(['open'])
    expect(browserCommand('win32', {})?.[0]).toBe('rundll32')
    expect(browserCommand('linux', { DISPLAY: ':0', PATH: folder })).toBeUndefined()
    writeFileSync(join(folder, 'xdg-open'), '')
    expect(browserCommand('linux', { DISPLAY: ':0', PATH: `/nowhere:${folder}` })).toEqual(['xdg-open'])
    expect(browserCommand('linux', { PATH: folder })).toBeUndefined()
  })
})

describe('whether to build', () => {
  test('something built is missing, or older than the newest source below a folder', () => {
    const folder = temporaryFolder()
    const [source, built] = [join(folder, 'source'), join(folder, 'built.js')]
    mkdirSync(join(source, 'deep'), { recursive: true })
    writeFileSync(join(source, 'deep/a.ts'), '')
    utimesSync(join(source, 'deep/a.ts'), 1000, 1000)
    expect(isStale([source], [built]), 'missing').toBe(true)
    writeFileSync(built, '')
    utimesSync(built, 1001, 1001)
    expect(isStale([source, join(folder, 'no-such-source')], [built]), 'newer').toBe(false)
    utimesSync(join(source, 'deep/a.ts'), 1002, 1002)
    expect(isStale([source], [built]), 'older').toBe(true)
  })
})
