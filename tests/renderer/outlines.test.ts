import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { type Form, forms } from '../../core/vocabulary/clock.ts'
import { views } from '../../core/vocabulary/intake.ts'
import { outline, outlineSheet } from '../../electron/papers/parts/outlines.ts'
import { Drawing } from '../../renderer/condition/drawings/index.tsx'
import { sheet } from '../../renderer/condition/drawings/kit.tsx'
import { outlineOf } from './outline-marks.ts'

const file = join(import.meta.dirname, '../../assets/outlines.json')
const all = Object.keys(forms) as Form[]

/** Every different outline once, and which of them each view of each form is. */
function drawn(): string {
  const outlines: string[] = []
  const place = (form: Form, view: (typeof views)[number]): number => {
    const marks = JSON.stringify(outlineOf(renderToStaticMarkup(createElement(Drawing, { form, view }))))
    if (!outlines.includes(marks)) outlines.push(marks)
    return outlines.indexOf(marks)
  }
  const of = Object.fromEntries(
    all.map(form => [form, Object.fromEntries(views.map(view => [view, place(form, view)]))]),
  )
  return `{"of":${JSON.stringify(of)},\n"outlines":[\n${outlines.join(',\n')}\n]}\n`
}

test('the outlines that papers draw are the drawings of the pages (written anew with UPDATE_OUTLINES=1 when a drawing changes)', () => {
  const now = drawn()
  if (process.env.UPDATE_OUTLINES) writeFileSync(file, now)
  expect(readFileSync(file, 'utf8') === now).toBe(true)
})

test('every view of every form has an outline on a sheet of the same shape as on the pages', () => {
  expect(outlineSheet).toEqual(sheet)
  for (const form of all) for (const view of views) expect(outline(form, view).length).toBeGreaterThan(8)
})
