import type { Settings, SettingsGroup } from '../../core/shop/settings.ts'
import type { Read, Write } from '../file/ledger.ts'
import { settings } from '../schema/index.ts'
import { question } from './question.ts'
import { refuse } from './refusal.ts'

const groups = question(read => read.select().from(settings))

/** The shop's settings; refuses with `shop.notOpen` while the shop has none. */
export function readSettings(read: Read): Settings {
  const rows = groups(read).all()
  if (rows.length === 0) refuse('shop.notOpen')
  return Object.fromEntries(rows.map(row => [row.name, row.value])) as unknown as Settings
}

/** True once the shop has been opened. */
export const isShopOpen = (read: Read): boolean => read.select().from(settings).limit(1).all().length > 0

/** Keeps one group of settings, replacing it whole. */
export function keepSettings<G extends SettingsGroup>(tx: Write, group: G, value: Settings[G]): void {
  tx.insert(settings)
    .values({ name: group, value })
    .onConflictDoUpdate({ target: settings.name, set: { value } })
    .run()
}
