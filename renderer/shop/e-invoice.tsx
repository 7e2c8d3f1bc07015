import { useEntry } from '../parts/entry.ts'
import { Tick } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** Whether invoices are also to be had as files that other programs read. */
export function EInvoice() {
  const { settings, words } = useShop()
  const { eInvoice: said, groups, saved } = words.shop
  const entry = useEntry(settings.eInvoice, 'eInvoice')
  const act = useChange(saved(groups['e-invoice']))
  return (
    <SettingsForm
      intro={said.intro}
      label={groups['e-invoice']}
      act={act}
      input={() => ({ eInvoice: { ...entry.value } })}
    >
      <Tick label={said.on} {...entry.at('on')} />
    </SettingsForm>
  )
}
