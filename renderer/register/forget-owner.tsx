import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { answer, api } from '../api.ts'
import { useAskedAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField } from '../parts/field.tsx'
import { Facts } from '../parts/page.tsx'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import type { OwnerProps } from './owner.ts'

type Asked = InferResponseType<(typeof api.pages.owners)[':id']['forget']['$get']>

/** Takes an owner's personal data out: first what goes, what stays and until when, and which old copies still have it. */
export function ForgetOwner(props: OwnerProps) {
  const { id } = props.view.owner
  const { data } = useQuery({
    queryKey: ['forget', id],
    queryFn: () => answer(api.pages.owners[':id'].forget.$get({ param: { id: String(id) } })),
  })
  return data && <Forget {...props} asked={data} />
}

function Forget({ view: { owner }, close, asked }: OwnerProps & { asked: Asked }) {
  const { words, formats } = useShop()
  const { forgetForm } = words.register
  const entry = useEntry({ reason: '' })
  const act = useAskedAct(
    (ledger, json: { ownerId: number; reason: string }) =>
      answer(ledger.register.forgetOwner.$post({ json })),
    {
      said: () => forgetForm.said,
      after: close,
      confirm: () => ({
        title: forgetForm.ask(owner.name),
        body: <p>{forgetForm.asked}</p>,
        yesWords: forgetForm.send,
      }),
    },
  )
  return (
    <ActPanel
      reserved="register.forgetOwner"
      title={forgetForm.title}
      act={act}
      input={() => ({ ownerId: owner.id, ...entry.value })}
      send={forgetForm.send}
      close={close}
    >
      <p>{forgetForm.intro}</p>
      {asked.forgottenOn && <p className="late">{forgetForm.done(formats.date(asked.forgottenOn))}</p>}
      <aside className="note">
        <p>{forgetForm.law}</p>
      </aside>
      <What asked={asked} />
      <TextField label={forgetForm.reason} hint={forgetForm.reasonHint} {...entry.at('reason')} />
    </ActPanel>
  )
}

const list = (lines: readonly string[]) => (
  <ul>
    {lines.map(line => (
      <li key={line}>{line}</li>
    ))}
  </ul>
)

/** What goes, what stays, what stands against it, and old copies. */
function What({ asked }: { asked: Asked }) {
  const { words, formats } = useShop()
  const { forgetForm } = words.register
  const kept = asked.kept.map(({ kind, number, until }) =>
    forgetForm.keptPaper(words.papers.titleNumber(words.papers.titles[kind], number), formats.date(until)),
  )
  return (
    <Facts
      facts={[
        [
          forgetForm.obstacles,
          asked.problems.length > 0 && list(asked.problems.map(({ message }) => message)),
        ],
        [forgetForm.goes, forgetForm.counts(asked)],
        [forgetForm.kept, kept.length > 0 ? list(kept) : forgetForm.keptNone],
        [
          forgetForm.copies,
          asked.copies.length > 0 ? (
            <>
              {list(asked.copies)}
              <p className="quiet">{forgetForm.copiesAdvice}</p>
            </>
          ) : (
            forgetForm.copiesNone
          ),
        ],
      ]}
    />
  )
}
