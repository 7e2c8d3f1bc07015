import { Link } from 'wouter'
import { isInShop } from '../../core/standing/stages.ts'
import { beatsWords, belongingWords, seenWords } from '../clock-words.ts'
import { AddPhotographs } from '../condition/photograph/add-photographs.tsx'
import { PhotographsOf } from '../condition/photograph/photographs-of.tsx'
import { ConditionReport } from '../condition/report.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { Facts, Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { useQuotedWords } from './estimate/quoted.tsx'
import type { Repair } from './repair.ts'
import { StrikeNote } from './strike-note.tsx'

/** Whose clock it is and how to reach them. */
export function OwnerSection({ view: { owner } }: { view: Repair }) {
  const { repair } = useShop().words
  return (
    <Section title={repair.sections.owner}>
      <p>
        <Link href={`/register/owner/${owner.id}`}>{owner.name}</Link>
      </p>
      <ul className="contacts">
        {owner.contacts.map(({ id, kind, value, shown, preferred }) => (
          <li key={id}>
            <a href={`${kind === 'phone' ? 'tel' : 'mailto'}:${value}`}>{shown}</a>
            {preferred && owner.contacts.length > 1 && <span className="quiet"> {repair.preferred}</span>}
          </li>
        ))}
      </ul>
      {owner.address && <p className="several-lines">{owner.address}</p>}
      {owner.notes && <p className="quiet several-lines">{owner.notes}</p>}
    </Section>
  )
}

/** What clock it is. */
export function ClockSection({ view: { clock } }: { view: Repair }) {
  const { words, formats } = useShop()
  const { repair } = words
  const movement = [
    seenWords(words.powers, clock.power),
    seenWords(words.escapements, clock.escapement),
    seenWords(words.strikes, clock.strike),
    clock.chime !== 'none' && seenWords(words.chimes, clock.chime),
    beatsWords(words, formats, clock.beats),
  ]
  return (
    <Section title={repair.sections.clock}>
      <Facts
        facts={[
          [repair.maker, clock.maker],
          [repair.serial, clock.serial],
          [repair.marks, clock.marks],
          [repair.movement, movement.filter(Boolean).join(', ') || words.notLookedAt],
          [repair.notes, clock.notes],
        ]}
      />
      <p>
        <Link href={`/register/clock/${clock.id}`}>{repair.clockHistory}</Link>
      </p>
    </Section>
  )
}

/** The fault as told, the condition report and the belongings. */
export function IntakeSection({ view }: { view: Repair }) {
  const { words, formats } = useShop()
  const { repair } = words
  const {
    comeback,
    quoted: { fee },
  } = view
  const { fault, scope, springs, agreedWords, signedInBy } = view.repair
  const quoted = useQuotedWords(view)
  return (
    <Section title={repair.sections.intake}>
      <Facts
        facts={[
          [repair.comebackOf, comeback && <ComesBack view={view} number={comeback.number} />],
          [repair.fault, fault],
          [repair.scope, words.scopes[scope]],
          [repair.springs, words.springStates[springs]],
          [repair.quoted, quoted],
          [repair.feeTold, fee ? formats.money(fee) : null],
          [repair.agreedWords, agreedWords],
          [repair.signedIn, signedInBy],
        ]}
      />
      <Condition view={view} />
      <Belongings view={view} />
    </Section>
  )
}

/** The repair a comeback comes back from, and whether it is covered, with what speaks against it. */
function ComesBack({ view, number }: { view: Repair; number: number }) {
  const { words } = useShop()
  const { comebackCovered, comebackNotCovered } = words.repair
  const { covered, comebackCauses } = view.repair
  const causes = comebackCauses.map(cause => words.exclusions[cause]).join(', ')
  return (
    <>
      <Link href={`/counter/${number}`}>{number}</Link>,{' '}
      {covered ? comebackCovered : comebackNotCovered(causes)}
    </>
  )
}

/** The condition report on its drawing, and the photographs of the whole clock. */
function Condition({ view }: { view: Repair }) {
  const { words } = useShop()
  const { wholeClock } = words.condition
  const inShop = isInShop(view.standing.stage)
  const whole = view.photographs.filter(one => one.noteId === null)
  return (
    <>
      <h3>{words.repair.condition}</h3>
      <ConditionReport
        repair={view}
        acts={note =>
          inShop &&
          note.struckReason === null && (
            <StrikeNote noteId={note.id} what={words.components[note.component]} />
          )
        }
      />
      {whole.length > 0 && <h3>{words.condition.photographs}</h3>}
      <PhotographsOf what={wholeClock} photographs={whole} canStrike={inShop} />
      {inShop && <AddPhotographs repair={view} />}
    </>
  )
}

function Belongings({ view: { belongings } }: { view: Repair }) {
  const { words, formats } = useShop()
  const { repair } = words
  const where = (one: Repair['belongings'][number]) =>
    one.returnedAt
      ? repair.returned(formats.instant(one.returnedAt))
      : one.unreturnedReason
        ? repair.notReturned(one.unreturnedReason)
        : words.custodies[one.custody]
  return (
    <Ledger
      plain
      caption={repair.belongings}
      groups={[{ title: '', rows: belongings }]}
      rowKey={one => one.id}
      empty={repair.noBelongings}
      columns={[
        { label: repair.tag, kind: 'text', cell: one => one.tag },
        { label: repair.belonging, kind: 'entry', cell: one => belongingWords(words, one) },
        { label: repair.custody, kind: 'text', cell: where },
      ]}
    />
  )
}
