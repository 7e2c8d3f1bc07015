import { minor } from '../../../core/money/minor.ts'
import { answer, type api } from '../../api.ts'
import { belongingWords } from '../../clock-words.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { type Bound, type LinesState, useEntry, useLines } from '../../parts/entry.ts'
import { TextField, Tick } from '../../parts/field.tsx'
import { More } from '../../parts/pane.tsx'
import { usePrintPaper, useSaidPaper, workingPlace } from '../../parts/paper-link.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { type ActProps, dueMinor, type Repair } from '../repair.ts'

interface Back {
  readonly id: number
  readonly returned: boolean
  readonly reason: string
}

/** What the shop received and must give back or account for. */
const received = ({ belongings }: Repair) => belongings.filter(({ custody }) => custody === 'received')

/** Hands the clock over: every belonging ticked back, who takes it, the balance settled or reasoned. */
export function HandOver({ view, close }: ActProps) {
  const { words } = useShop()
  const { handOverForm } = words.repair
  const { number, id } = view.repair
  const print = usePrintPaper()
  const said = useSaidPaper()
  const entry = useEntry({ toName: view.owner.name, authority: '', unpaidReason: '', adviceGiven: false })
  const ticked = useLines<Back>(
    'belongings',
    { id: 0, returned: false, reason: '' },
    line => line.id === 0,
    received(view).map(belonging => ({ id: belonging.id, returned: false, reason: '' })),
  )
  const { ahead } = view.warranty
  const warranted = ahead
    ? handOverForm.warranted(words.scopes[view.repair.scope], ahead.length, ahead.unit)
    : handOverForm.notWarranted
  const act = useAskedAct(
    (ledger, input: Parameters<typeof api.counter.handOver.$post>[0]['json']) =>
      answer(ledger.counter.handOver.$post({ json: input })),
    {
      said: ({ warrantyNumber }) =>
        warrantyNumber === null
          ? handOverForm.said(number)
          : handOverForm.saidWarranty(number, warrantyNumber),
      confirm: input => ({
        title: handOverForm.ask(number),
        body: (
          <p>
            {handOverForm.asked(input.toName)} {warranted}
          </p>
        ),
        yesWords: handOverForm.send,
      }),
      papers: ({ warrantyId, warrantyNumber }) => [
        ...(warrantyId !== null && warrantyNumber !== null
          ? [said('warranty', warrantyId, warrantyNumber)]
          : []),
        { place: workingPlace('hand-over', id), title: words.papers.titles['hand-over'] },
      ],
      after: ({ warrantyId }) => {
        close()
        if (warrantyId !== null) void print(warrantyId)
      },
    },
  )
  const input = () => ({ ...entry.value, repairId: id, belongings: ticked.written() })
  return (
    <ActPanel title={handOverForm.title} act={act} input={input} send={handOverForm.send} close={close}>
      <TickedBack view={view} ticked={ticked} />
      <div className="fields form">
        <TextField label={handOverForm.toName} {...entry.at('toName')} />
        <TextField
          label={handOverForm.authority}
          hint={handOverForm.authorityHint}
          {...entry.at('authority')}
        />
      </div>
      <Unpaid view={view} reason={entry.at('unpaidReason')} />
      <p>{warranted}</p>
      {view.setUpAdvice.length > 0 && (
        <>
          <ul className="quiet advice">
            {view.setUpAdvice.map(code => (
              <li key={code}>{words.setUpAdvice[code]}</li>
            ))}
          </ul>
          <Tick label={handOverForm.adviceGiven} {...entry.at('adviceGiven')} />
        </>
      )}
    </ActPanel>
  )
}

function TickedBack({ view, ticked }: { view: Repair; ticked: LinesState<Back> }) {
  const { words } = useShop()
  const { handOverForm } = words.repair
  return (
    <fieldset className="form ticked-list">
      <legend className="group-label">{handOverForm.belongings}</legend>
      {received(view).map((belonging, index) => {
        const item = [belonging.tag, belongingWords(words, belonging)].filter(Boolean).join(' ')
        const returned = ticked.at(index, 'returned')
        return (
          <div key={belonging.id} className="ticked-back">
            <Tick label={item} {...returned} />
            {!returned.value && (
              <More label={handOverForm.notReturned}>
                <TextField label={handOverForm.reason(item)} {...ticked.at(index, 'reason')} />
              </More>
            )}
          </div>
        )
      })}
    </fieldset>
  )
}

/** What is still owed, and the reason why the clock may go without it. */
function Unpaid({ view, reason }: { view: Repair; reason: Bound<string> }) {
  const { words, formats } = useShop()
  const { handOverForm } = words.repair
  const due = dueMinor(view)
  if (due === 0) return null
  return (
    <div className="form">
      <p className="late">{handOverForm.due(formats.money(minor(due)))}</p>
      <TextField label={handOverForm.unpaidReason} {...reason} />
    </div>
  )
}
