import { mkdirSync, readdirSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, expect, it } from 'vitest'
import { sweepFolder, sweepUnfinished } from '../../db/file/unfinished.ts'
import { temporaryFolder } from './temporary-ledger.ts'

const place = temporaryFolder()
afterEach(() => place.remove())

it('what a killed program left half written is taken away; whatever is whole, another ledger’s, or being written now, stays', () => {
  const at = (...path: string[]) => join(place.folder, ...path)
  const put = (...path: string[]) => {
    mkdirSync(join(at(...path), '..'), { recursive: true })
    writeFileSync(at(...path), 'x')
  }
  const whole = [
    ['shop.countwheel'],
    ['other.countwheel.unfinished'],
    ['shop.papers', 'ab', 'abcd.pdf'],
    ['backups', 'shop 2027-03-01T092000.000Z.countwheel'],
    ['backups', 'shop.photographs', 'cd', 'cdef.jpg'],
    ['backups', 'a letter.unfinished'],
    ['backups', 'other 2027-03-02T092000.000Z.countwheel.unfinished'],
  ]
  const half = [
    ['shop.countwheel.unfinished'],
    ['shop.countwheel.before-0002.unfinished'],
    ['shop.papers', 'ab', 'abce.pdf.unfinished'],
    ['shop.photographs', 'cd', 'cdef.jpg.unfinished'],
    ['backups', 'shop 2027-03-02T092000.000Z.countwheel.unfinished'],
    ['backups', 'shop.photographs', 'cd', 'cdee.jpg.unfinished'],
  ]
  for (const path of [...whole, ...half]) put(...path)
  const openedMs = Date.now() + 1000
  const since = ['shop.countwheel.copy.unfinished']
  put(...since)
  utimesSync(at(...since), (openedMs + 1000) / 1000, (openedMs + 1000) / 1000)
  sweepUnfinished(at('shop.countwheel'), openedMs)
  sweepFolder(at('backups', 'shop.countwheel'))
  const left = readdirSync(place.folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name))
  expect(left.toSorted()).toEqual([...whole, since].map(path => at(...path)).toSorted())
})
