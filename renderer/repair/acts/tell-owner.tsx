import { messageText } from '../../../core/messages/message-text.ts'
import { isToCollect } from '../../../core/standing/stages.ts'
import type { MessageAbout, Way } from '../../../core/vocabulary/work.ts'
import { answer, api } from '../../api.ts'
import { useAct } from '../../parts/act.tsx'
import { useSay } from '../../parts/announcer.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, TextArea } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps, Repair } from '../repair.ts'

/** What a message about this repair can speak of. */
function useFacts(view: Repair) {
  const { settings, words } = useShop()
  const estimate = view.estimates.findLast(one => one.sentAt !== null)
  return {
    owner: view.owner.name,
    shop: settings.shop.name,
    phone: settings.shop.phone,
    repairNumber: view.repair.number,
    clock: words.forms[view.clock.form],
    estimatedOn: view.repair.estimatedOn,
    due: view.money.balance.due,
    estimate: estimate
      ? { number: estimate.number, total: estimate.togetherMinor, validUntil: estimate.validUntil }
      : null,
    finding: view.bench.findings.findLast(one => one.struckReason === null)?.text ?? null,
  }
}

/** What the message is most likely about, by where the repair stands. */
const likely = ({ standing: { stage, waitingFor }, uncollected }: Repair): MessageAbout => {
  if (uncollected) return 'uncollected'
  if (isToCollect(stage)) return 'ready'
  if (waitingFor === 'owner') return 'finding'
  return stage === 'estimate-out' ? 'reminder' : 'delay'
}

/** Writes what the owner is told from a template, for copying or an e-mail, and records it as it was said. */
export function TellOwner({ view, close }: ActProps) {
  const { words, formats, settings } = useShop()
  const { tellForm } = words.repair
  const announce = useSay()
  const facts = useFacts(view)
  const written = (about: MessageAbout) => messageText(about, facts, words, formats)
  const address = view.owner.contacts.find(contact => contact.kind === 'e-mail')?.value
  const first = likely(view)
  const way: Way = view.owner.contacts[0]?.kind === 'e-mail' ? 'e-mail' : 'telephone'
  const entry = useEntry({ about: first, way, text: written(first) })
  const act = useAct(
    (input: { repairId: number; about: MessageAbout; way: Way; text: string }) =>
      answer(api.counter.tellOwner.$post({ json: input })),
    { said: () => tellForm.said, after: close },
  )
  const mail = new URLSearchParams({
    subject: tellForm.subject(view.repair.number, settings.shop.name),
    body: entry.value.text,
  })
  const copy = async () => {
    await navigator.clipboard.writeText(entry.value.text)
    announce(tellForm.copied)
  }
  return (
    <ActPanel
      title={tellForm.title}
      act={act}
      input={() => ({ repairId: view.repair.id, ...entry.value })}
      send={tellForm.send}
      close={close}
    >
      <div className="fields form">
        <Choice
          label={tellForm.about}
          choices={words.messageAbouts}
          {...entry.at('about')}
          onChange={about => entry.set({ about, text: written(about) })}
        />
        <Choice label={tellForm.way} choices={words.ways} {...entry.at('way')} />
      </div>
      <TextArea label={tellForm.text} hint={tellForm.hint} rows={9} {...entry.at('text')} />
      <div className="buttons">
        <button type="button" className="second" onClick={copy}>
          {tellForm.copy}
        </button>
        {address && (
          <a href={`mailto:${address}?${mail.toString().replaceAll('+', '%20')}`}>{tellForm.mail}</a>
        )}
      </div>
    </ActPanel>
  )
}
