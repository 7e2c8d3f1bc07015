import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** Expects that axe finds nothing on the page as it stands, by the rules of WCAG 2.2 AA and good practice. */
export async function clearToAxe(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze()
  expect(violations.map(v => `${v.id}: ${v.nodes.map(n => n.target.join(' ')).join(' | ')}`)).toEqual([])
}
