import { existsSync, mkdirSync, readdirSync, renameSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { lookInto } from '../../db/file/look.ts'
import { clearToAxe } from './clear-to-axe.ts'
import { Hands } from './hands.ts'
import { startShop } from './start-shop.ts'
import { workLedger } from './work-shop.ts'

const { counter } = en
const { backups: say, save } = en.shop

/** Enters an owner as from another window. */
const enter = (page: Page, name: string) =>
  page.evaluate(async name => {
    const body = JSON.stringify({ name })
    const headers = { 'Content-Type': 'application/json' }
    return (await fetch('/api/register/addOwner', { method: 'POST', headers, body })).status
  }, name)

/** The copies in a folder by name, the oldest first. */
const copiesIn = (folder: string) =>
  existsSync(folder) ? readdirSync(folder).filter(name => name.endsWith('.countwheel')) : []

test('copies go to the shop’s stick by themselves; pulled out, the Counter says so; put in again, the copy is made and said', async ({
  page,
}) => {
  const work = await workLedger(1)
  const stick = join(dirname(work.file), 'stick')
  const folder = join(stick, 'Countwheel')
  mkdirSync(folder, { recursive: true })
  const shop = await startShop({ ledger: work.file })
  const hands = new Hands(page)
  try {
    await page.goto(shop.url)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    await page.goto(`${shop.origin}/shop/backups`)
    await hands.fill(say.into, 'stick')
    await hands.push(save)
    await expect(page.getByText(en.problems['backup.folderNotWhole'](), { exact: true })).toBeVisible()
    await clearToAxe(page)
    await hands.fill(say.into, folder)
    await hands.push(save)
    await expect(page.getByText(say.changed)).toBeVisible()
    await expect.poll(() => copiesIn(folder).length, { timeout: 40_000 }).toBe(1)

    renameSync(stick, `${stick} in a pocket`)
    await page.goto(`${shop.origin}/counter`)
    await expect(page.getByText(counter.backupAway(folder))).toBeVisible()
    await clearToAxe(page)
    expect(await enter(page, 'Odalys Wren')).toBe(200)
    // A look later nothing was made in its place.
    await page.waitForTimeout(12_000)
    expect(existsSync(stick)).toBe(false)

    renameSync(`${stick} in a pocket`, stick)
    await expect(page.getByText(counter.backupCameBack('').split(',')[0] ?? '')).toBeVisible({
      timeout: 40_000,
    })
    expect(copiesIn(folder)).toHaveLength(2)
    expect(lookInto(join(folder, copiesIn(folder)[1] ?? '')).lastAct).toBe('register.addOwner')
  } finally {
    await shop.close()
    work.remove()
  }
})

test('what was entered after the last copy is copied on closing the program', async ({ page }) => {
  const work = await workLedger(1)
  const folder = join(dirname(work.file), 'backups')
  const shop = await startShop({ ledger: work.file })
  try {
    await page.goto(shop.url)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    await expect.poll(() => copiesIn(folder).length, { timeout: 30_000 }).toBe(1)
    expect(await enter(page, 'Odalys Wren')).toBe(200)
    await shop.close()
    const [, last = ''] = copiesIn(folder)
    expect(lookInto(join(folder, last)).lastAct).toBe('register.addOwner')
  } finally {
    work.remove()
  }
})
