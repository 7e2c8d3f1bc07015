import { readdirSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { clearToAxe } from './clear-to-axe.ts'
import { Hands } from './hands.ts'
import { startShop } from './start-shop.ts'
import { workLedger } from './work-shop.ts'

const { restore, shop: say } = en
type Work = Awaited<ReturnType<typeof workLedger>>

const ask = (page: Page, path: string, method: 'GET' | 'POST', body?: object) =>
  page.evaluate(
    async ([path, method, body]) => {
      const answer = await fetch(path, {
        method,
        ...(body ? { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) } : {}),
      })
      return { status: answer.status, body: await answer.json() }
    },
    [path, method, body] as const,
  )
const owners = async (page: Page) => (await ask(page, '/api/pages/owners', 'GET')).body.rows.length

/** A shop of two owners, a backup of it, and a third owner entered after the backup. */
async function backedUp(): Promise<Work> {
  const work = await workLedger(1)
  return work
}

/** Begins at a started shop with a backup and one entry after it. */
async function withBackup(page: Page, url: string): Promise<void> {
  await page.goto(url)
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  const made = await ask(page, '/api/backup', 'POST', {})
  expect(made.status, JSON.stringify(made.body)).toBe(200)
  expect((await ask(page, '/api/register/addOwner', 'POST', { name: 'Odalys Wren' })).status).toBe(200)
}

test('a backup is brought back from the running program, which goes on with it', async ({ page }) => {
  const work = await backedUp()
  const shop = await startShop({ ledger: work.file })
  const hands = new Hands(page)
  try {
    await withBackup(page, shop.url)
    const before = await owners(page)
    await page.goto(`${shop.origin}/shop/backups`)
    await hands.push(say.backups.restore)
    await expect(
      page.getByText(restore.missingEntries({ count: 1, from: '', to: '' }).slice(0, 9)),
    ).toBeVisible()
    await clearToAxe(page)
    await hands.to(page.getByRole('button', { name: new RegExp(`^${restore.choose}`) }).first())
    await hands.press('Enter')
    await expect(page.getByText(/2 owners/)).toBeVisible()
    await clearToAxe(page)
    await hands.push(restore.bringBack)
    await page.waitForURL(`${shop.origin}/counter`)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    expect(await owners(page)).toBe(before - 1)
    expect((await ask(page, '/api/register/addOwner', 'POST', { name: 'Tobias Vane' })).status).toBe(200)
  } finally {
    await shop.close()
    work.remove()
  }
})

test.describe('a ledger that cannot be opened as it stands', () => {
  let work: Work
  test.beforeEach(async ({ page }) => {
    work = await backedUp()
    const shop = await startShop({ ledger: work.file })
    await withBackup(page, shop.url)
    await shop.close()
  })
  test.afterEach(() => work.remove())

  test('because it is gone: the opening page offers its backup, by keyboard alone', async ({ page }) => {
    rmSync(work.file)
    const shop = await startShop({ ledger: work.file, asks: true })
    const hands = new Hands(page)
    try {
      for (const colorScheme of ['dark', 'light'] as const) {
        await page.emulateMedia({ colorScheme })
        await page.goto(colorScheme === 'dark' ? shop.url : shop.origin)
        await expect(page.getByRole('heading', { level: 1, name: restore.needsDecision })).toBeVisible()
        await expect(
          page.getByRole('button', { name: new RegExp(`^${restore.choose}`) }).first(),
        ).toBeVisible()
        await clearToAxe(page)
      }
      expect((await ask(page, '/api/pages/owners', 'GET')).body.problems[0].code).toBe('ledger.notOpen')
      await hands.to(page.getByRole('button', { name: new RegExp(`^${restore.choose}`) }).first())
      await hands.press('Enter')
      await hands.push(restore.bringBack)
      await expect(page.getByRole('link', { name: /Counter/ }).first()).toBeVisible()
      expect(await owners(page)).toBeGreaterThan(0)
    } finally {
      await shop.close()
    }
  })

  test('because entries are missing: it may be gone on with knowingly', async ({ page }) => {
    const shop = await startShop({ ledger: work.file })
    await page.goto(shop.url)
    await ask(page, '/api/register/addOwner', 'POST', { name: 'Dot Quill' })
    shop.process.kill('SIGKILL')
    await new Promise(resolve => shop.process.once('exit', resolve))
    rmSync(`${work.file}-wal`)
    const again = await startShop({ ledger: work.file, asks: true })
    const hands = new Hands(page)
    try {
      await page.goto(again.url)
      await expect(page.getByRole('alert')).toContainText('One entry is missing from')
      await hands.push(restore.goOn)
      await expect(page.getByRole('link', { name: /Counter/ }).first()).toBeVisible()
      expect((await ask(page, `/api/find?q=Dot`, 'GET')).body.results).toEqual([])
    } finally {
      await again.close()
    }
  })

  test('a new shop is begun only when that is chosen, and the old one’s papers are set aside', async ({
    page,
  }) => {
    rmSync(work.file)
    const shop = await startShop({ ledger: work.file, asks: true })
    const hands = new Hands(page)
    try {
      await page.goto(shop.url)
      await hands.push(restore.beginNew)
      await expect(page.getByRole('heading', { level: 1 })).not.toContainText(restore.needsDecision)
      expect((await ask(page, '/api/pages/shop', 'GET')).body.open).toBe(false)
    } finally {
      await shop.close()
    }
    const aside = readdirSync(dirname(work.file)).filter(name => name.startsWith('shop set aside'))
    expect(aside.flatMap(name => readdirSync(join(dirname(work.file), name)))).toContain('shop.papers')
  })
})
