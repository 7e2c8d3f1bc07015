import { expect, type Locator, type Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'

/** A person at the keyboard, without a mouse: everything is reached by Tab and arrow keys and done by keys. */
export class Hands {
  readonly page: Page
  /** Keys pressed besides the words themselves. */
  presses = 0

  /** Where several people work, the first act in a window asks who it is: they say so. */
  constructor(page: Page) {
    this.page = page
    const asked = page.getByRole('dialog', { name: en.screens.who.ask })
    void page.addLocatorHandler(asked, () => asked.getByRole('button').first().click())
  }

  async press(key: string): Promise<void> {
    this.presses += 1
    await this.page.keyboard.press(key)
  }

  /** The words themselves. */
  async write(text: string): Promise<void> {
    await this.page.keyboard.type(text)
  }

  /** Tabs on until the control has the focus; fails when a whole round does not meet it. */
  async to(control: Locator): Promise<void> {
    await expect(control).toBeAttached()
    for (let step = 0; step < 150; step++) {
      if (await control.evaluate(element => element === document.activeElement)) return
      await this.press('Tab')
    }
    throw new Error(`Tab does not reach ${control}`)
  }

  /** Writes over whatever the field holds. */
  async fill(label: string | RegExp, text: string): Promise<void> {
    await this.to(this.page.getByLabel(label, { exact: true }).first())
    await this.press('ControlOrMeta+A')
    await this.write(text)
  }

  /** Chooses in a native list by its first letters. */
  async choose(label: string, text: string): Promise<void> {
    const list = this.page.getByLabel(label, { exact: true }).first()
    await this.to(list)
    // What there is to choose from may still be on its way.
    await expect(list.locator('option', { hasText: text }).first()).toBeAttached()
    await this.write(text)
    await expect(list.locator('option:checked')).toHaveText(text)
  }

  /** Waits until what is listed belongs to all that was typed, not to fewer letters; returns the box with its list. */
  async found(): Promise<Locator> {
    const list = this.page.locator('.combobox:has(:focus)')
    await expect(list.getByRole('status')).not.toBeEmpty()
    return list
  }

  /** Points with the arrows at one of what was found, and takes it. */
  async take(name: string | RegExp): Promise<void> {
    const list = await this.found()
    const wanted = list.getByRole('option', { name, exact: true })
    await expect(wanted).toBeVisible()
    for (let step = await list.getByRole('option').count(); step > 0; step--) {
      if ((await wanted.getAttribute('aria-selected')) === 'true') break
      await this.press('ArrowDown')
    }
    await expect(wanted).toHaveAttribute('aria-selected', 'true')
    await this.press('Enter')
  }

  /** Presses a button that has been reached. */
  async push(name: string | RegExp): Promise<void> {
    await this.to(this.page.getByRole('button', { name, exact: true }).first())
    await this.press('Enter')
  }

  /** Says yes in the question that stands open. */
  async agree(name: string | RegExp): Promise<void> {
    await this.to(this.page.getByRole('dialog').getByRole('button', { name, exact: true }))
    await this.press('Enter')
    await expect(this.page.getByRole('dialog')).toHaveCount(0)
  }

  /** Follows a link that has been reached. */
  async follow(name: string | RegExp): Promise<void> {
    await this.to(this.page.getByRole('link', { name, exact: true }).first())
    await this.press('Enter')
  }
}
