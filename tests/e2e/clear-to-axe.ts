import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** Expects that axe finds nothing on the page as it stands, by the rules of WCAG 2.2 AA and good practice, or by those named alone. */
export async function clearToAxe(page: Page, only?: readonly string[]): Promise<void> {
  const builder = new AxeBuilder({ page })
  const { violations } = await (only ? builder.withRules([...only]) : builder.withTags(rules)).analyze()
  expect(violations.map(v => `${v.id}: ${v.nodes.map(n => n.target.join(' ')).join(' | ')}`)).toEqual([])
}
