import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import { answer, type api } from '../api.ts'
import { clockMarks, clockWords } from '../clock-words.ts'
import { useAskedAct } from '../parts/act.tsx'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import { ChooseOwner, ChoosePanel, type ChosenOwner } from './choose-owner.tsx'
import { type Owner, type OwnerProps, ownerQuery } from './owner.ts'

type Merge = Parameters<typeof api.register.mergeOwners.$post>[0]['json']

/** Marks another entry as the same person as this owner: first the duplicate is found, then everything that comes over is shown. */
export function MergeOwner(props: OwnerProps) {
  const { mergeForm } = useShop().words.register
  const { owner } = props.view
  const [duplicate, setDuplicate] = useState<ChosenOwner | null>(null)
  const { data } = useQuery({ ...ownerQuery(duplicate?.id ?? 0), enabled: duplicate !== null })
  const chooser = (
    <>
      <p className="quiet">{mergeForm.advice(owner.name)}</p>
      <ChooseOwner
        name="ownerId"
        label={mergeForm.which}
        hint={mergeForm.whichHint}
        chosen={duplicate}
        onChoose={setDuplicate}
      />
    </>
  )
  if (duplicate && data && data.owner.id !== owner.id)
    return (
      <Merge {...props} from={data}>
        {chooser}
      </Merge>
    )
  return (
    <ChoosePanel title={mergeForm.title} close={props.close}>
      {chooser}
      {duplicate?.id === owner.id && <p className="late">{mergeForm.same}</p>}
    </ChoosePanel>
  )
}

function Merge({
  view: { owner },
  close,
  from,
  children,
}: OwnerProps & { from: Owner; children: ReactNode }) {
  const { mergeForm } = useShop().words.register
  const { name } = from.owner
  const act = useAskedAct((ledger, json: Merge) => answer(ledger.register.mergeOwners.$post({ json })), {
    said: () => mergeForm.said(name, owner.name),
    after: close,
    confirm: () => ({
      title: mergeForm.ask(name, owner.name),
      body: <ComesOver from={from} into={owner.name} />,
      yesWords: mergeForm.send,
    }),
  })
  return (
    <ActPanel
      title={mergeForm.title}
      act={act}
      input={() => ({ ownerId: from.owner.id, intoId: owner.id })}
      send={mergeForm.send}
      close={close}
    >
      {children}
      <ComesOver from={from} into={owner.name} />
    </ActPanel>
  )
}

/** Contacts, clocks and repairs of the duplicate, one by one. */
function ComesOver({ from, into }: { from: Owner; into: string }) {
  const { words } = useShop()
  const { mergeForm } = words.register
  const contacts = [...from.owner.contacts, ...from.struckContacts].map(({ value }) => value)
  const clocks = from.clocks.map(clock =>
    [clockWords(words, clock), clockMarks(words, clock)].filter(Boolean).join(', '),
  )
  const repairs = from.repairs.map(({ number }) => String(number))
  const lines = [
    { words: mergeForm.contacts(contacts.length), list: contacts.join(', ') },
    { words: mergeForm.clocks(clocks.length), list: clocks.join(' · ') },
    { words: mergeForm.repairs(repairs.length), list: repairs.join(', ') },
  ].filter(({ list }) => list !== '')
  return (
    <div className="comes-over">
      <p>{mergeForm.comesOver(from.owner.name, into)}</p>
      <ul>
        {lines.map(line => (
          <li key={line.words}>
            <b>{line.words}</b> <span className="quiet">{line.list}</span>
          </li>
        ))}
        {lines.length === 0 && <li>{mergeForm.nothing}</li>}
      </ul>
      <p className="quiet">
        {mergeForm.keeps} {mergeForm.cannotUndo}
      </p>
    </div>
  )
}
