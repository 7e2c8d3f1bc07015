import './restore.css'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { answer } from '../api.ts'
import { ActButton, ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField, Tick } from '../parts/field.tsx'
import { useWords } from '../words.ts'
import { type CopyLook, restoreApi } from './api.ts'

interface Shown {
  /** An instant as it is written here. */
  readonly shown: (instant: string) => string
}

/** Chooses a copy of the ledger, looks at it, and brings it back. `close` is the way back, where there is one. */
export function RestoreCopies({ shown, close }: Shown & { close?: () => void }) {
  const { restore, screens } = useWords()
  const [chosen, choose] = useState<CopyLook | null>(null)
  if (chosen) return <Chosen look={chosen} shown={shown} back={() => choose(null)} />
  return (
    <section className="restore" aria-label={restore.title}>
      <p>{restore.intro}</p>
      <Usual shown={shown} choose={choose} />
      <Elsewhere choose={choose} />
      {close && (
        <div className="buttons">
          <button type="button" className="second" onClick={close}>
            {screens.form.no}
          </button>
        </div>
      )}
    </section>
  )
}

const nameOf = (path: string) => path.split(/[\\/]/).at(-1) ?? path

/** The copies that stand where this program puts them. */
function Usual({ shown, choose }: Shown & { choose: (look: CopyLook) => void }) {
  const { restore } = useWords()
  const { data } = useQuery({ queryKey: ['restore'], queryFn: () => answer(restoreApi.index.$get()) })
  if (!data) return null
  if (data.copies.length === 0) return <p className="quiet">{restore.none}</p>
  return (
    <>
      <h2>{restore.copies}</h2>
      <ul className="copies">
        {data.copies.map(look => (
          <li key={look.path}>
            <div>
              <b>{look.contents ? shown(look.contents.tail.at) : nameOf(look.path)}</b>
              <span className="quiet">
                {look.refused ? restore.cannot(look.refused) : <Missing look={look} shown={shown} />}
              </span>
            </div>
            <button
              type="button"
              className="second"
              aria-label={`${restore.choose}: ${nameOf(look.path)}`}
              onClick={() => choose(look)}
            >
              {restore.choose}
            </button>
          </li>
        ))}
      </ul>
    </>
  )
}

/** What of the present ledger the copy does not have, in one line. */
function Missing({ look: { missing }, shown }: Shown & { look: CopyLook }) {
  const { restore } = useWords()
  if (!missing) return `${restore.missing}: ${restore.nothing}`
  const { count, from, to } = missing
  return `${restore.missing}: ${restore.missingEntries({ count, from: from && shown(from), to: shown(to) })}`
}

/** A copy on another disk, by its path. */
function Elsewhere({ choose }: { choose: (look: CopyLook) => void }) {
  const { restore } = useWords()
  const entry = useEntry({ path: '' })
  const act = useAct((json: { path: string }) => answer(restoreApi.look.$post({ json })), {
    said: () => '',
    after: choose,
  })
  return (
    <ActForm act={act} input={() => entry.value}>
      <TextField label={restore.another} hint={restore.anotherHint} {...entry.at('path')} />
      <div className="buttons">
        <Send act={act} look="second">
          {restore.look}
        </Send>
      </div>
    </ActForm>
  )
}

/** One copy: what stands in it, what would be missing, and the act itself. */
function Chosen({ look, shown, back }: Shown & { look: CopyLook; back: () => void }) {
  const { restore } = useWords()
  const { path, refused, contents } = look
  return (
    <section className="restore" aria-label={nameOf(path)}>
      <h2>{nameOf(path)}</h2>
      {refused && <p role="alert">{restore.cannot(refused)}</p>}
      {contents && (
        <dl className="facts">
          <Fact
            name={restore.last}
            value={`${shown(contents.tail.at)}: ${restore.lastAct(contents.lastAct)}`}
          />
          <Fact
            name={restore.holds}
            value={restore.contents({ ...contents, entries: contents.tail.count })}
          />
          <Fact name={restore.missing} value={<MissingFact look={look} shown={shown} />} />
        </dl>
      )}
      {contents && <BringBack look={look} back={back} />}
      {!contents && (
        <div className="buttons">
          <button type="button" className="second" onClick={back}>
            {restore.back}
          </button>
        </div>
      )}
    </section>
  )
}

function MissingFact({ look, shown }: Shown & { look: CopyLook }) {
  const { restore } = useWords()
  const { missing, filesMissing } = look
  const entries =
    missing &&
    restore.missingEntries({ ...missing, from: missing.from && shown(missing.from), to: shown(missing.to) })
  const files = filesMissing > 0 ? restore.filesMissing(filesMissing) : ''
  return [entries, files].filter(Boolean).join('. ') || restore.nothing
}

const Fact = ({ name, value }: { name: string; value: React.ReactNode }) => (
  <div className="fact">
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
)

/** Brings the copy back; afterwards every page is another ledger's, and begins anew. */
function BringBack({ look, back }: { look: CopyLook; back: () => void }) {
  const { restore } = useWords()
  const entry = useEntry({ otherLedger: false })
  const act = useAct(
    (json: { path: string; otherLedger: boolean }) => answer(restoreApi.bringBack.$post({ json })),
    { said: ({ setAside }) => restore.done({ folder: setAside }), after: () => location.assign('/') },
  )
  const input = { path: look.path, otherLedger: entry.value.otherLedger }
  return (
    <>
      {look.otherLedger && (
        <>
          <p className="late">{restore.otherLedger}</p>
          <Tick label={restore.otherLedgerTick} {...entry.at('otherLedger')} />
        </>
      )}
      <p className="quiet">{restore.checking}</p>
      <div className="buttons">
        <ActButton act={act} input={input}>
          {restore.bringBack}
        </ActButton>
        <button type="button" className="second" onClick={back}>
          {restore.back}
        </button>
      </div>
    </>
  )
}
