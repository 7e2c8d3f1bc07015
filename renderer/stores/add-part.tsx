import { useLocation } from 'wouter'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { Page, Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { blankPart, PartFields, usePartEntry } from './part-form.tsx'

/** A new part; its stock comes by receiving or counting. */
export function AddPart() {
  const { stores, screens } = useShop().words
  const [, navigate] = useLocation()
  const { entry, lines, input } = usePartEntry(blankPart, [])
  const act = useAct((given: ReturnType<typeof input>) => answer(api.stores.addPart.$post({ json: given })), {
    said: (_, { name }) => stores.form.added(name),
    after: ({ id }) => navigate(`/stores/${id}`),
  })
  return (
    <Page title={stores.form.add}>
      <Section title={stores.page.facts}>
        <ActForm act={act} input={input} label={stores.form.add} className="form wide-form" focusFirst>
          <PartFields entry={entry} lines={lines} />
          <div className="buttons">
            <Send act={act}>{stores.form.send}</Send>
            <button type="button" className="second" onClick={() => navigate('/stores')}>
              {screens.form.no}
            </button>
          </div>
        </ActForm>
      </Section>
    </Page>
  )
}
