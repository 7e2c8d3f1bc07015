import { useEntry } from '../parts/entry.ts'
import { TextArea, TextField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

const lines = (text: string): string[] =>
  text
    .split('\n')
    .map(line => line.trim())
    .filter(Boolean)

/** What heads every paper: name, address, telephone, e-mail, tax registration. */
export function NameAndPapers() {
  const { settings, words } = useShop()
  const { name: said, groups, saved } = words.shop
  const { addressLines, ...rest } = settings.shop
  const entry = useEntry({ ...rest, addressLines: addressLines.join('\n') }, 'shop')
  const act = useChange(saved(groups.name))
  const input = () => ({ shop: { ...entry.value, addressLines: lines(entry.value.addressLines) } })
  return (
    <SettingsForm intro={said.intro} label={groups.name} act={act} input={input}>
      <TextField label={said.name} {...entry.at('name')} />
      <TextArea label={said.address} hint={said.addressHint} rows={3} {...entry.at('addressLines')} />
      <div className="fields">
        <TextField label={said.phone} inputMode="tel" {...entry.at('phone')} />
        <TextField label={said.email} inputMode="email" {...entry.at('email')} />
      </div>
      <TextField label={said.taxNumber} hint={said.taxNumberHint} {...entry.at('taxNumber')} />
    </SettingsForm>
  )
}
