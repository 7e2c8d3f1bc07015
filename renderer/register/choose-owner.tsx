import { type ReactNode, useEffect, useRef, useState } from 'react'
import { Combobox } from '../parts/combobox.tsx'
import { Field } from '../parts/field.tsx'
import { Section } from '../parts/page.tsx'
import { useFound } from '../shell/find-box.tsx'
import { ownerDetail } from '../shell/found.ts'
import { useShop } from '../shop.tsx'

/** An owner chosen from those on record. */
export interface ChosenOwner {
  readonly id: number
  readonly name: string
}

interface ChooseOwnerProps {
  /** The path the request uses for the owner's number. */
  readonly name: string
  readonly label: string
  readonly hint: string
  readonly chosen: ChosenOwner | null
  readonly onChoose: (owner: ChosenOwner | null) => void
}

/** An owner on record, found while typing a name or part of a telephone number; once chosen, the name with a way to another. */
export function ChooseOwner({ name, label, hint, chosen, onChoose }: ChooseOwnerProps) {
  const { register, screens } = useShop().words
  const [text, setText] = useState('')
  const { results, settled } = useFound(text, 'owner')
  if (chosen)
    return (
      <p>
        <b>{chosen.name}</b>{' '}
        {/* biome-ignore lint/a11y/noAutofocus: the box that was typed into has gone, and the focus goes on where it stood */}
        <button type="button" className="plain" name={name} autoFocus onClick={() => onChoose(null)}>
          {register.mergeForm.another}
        </button>
      </p>
    )
  return (
    <Field name={name} label={label} hint={hint}>
      {control => (
        <Combobox
          control={control}
          label={register.mergeForm.found}
          text={text}
          onText={setText}
          items={results}
          settled={settled}
          itemKey={found => String(found.id)}
          show={found => (
            <>
              <b>{found.name}</b> <small>{ownerDetail(found)}</small>
            </>
          )}
          onChoose={found => onChoose({ id: found.id, name: found.name ?? '' })}
          nothing={screens.find.nothing}
          eager
        />
      )}
    </Field>
  )
}

/** The first step of an act on an owner still to be chosen: the box to find one, and a way back. */
export function ChoosePanel(props: { title: string; close: () => void; children: ReactNode }) {
  const { screens } = useShop().words
  const panel = useRef<HTMLDivElement>(null)
  useEffect(() => panel.current?.querySelector<HTMLElement>('input, button')?.focus(), [])
  return (
    <div className="act-panel" ref={panel}>
      <Section title={props.title}>
        <div className="form wide-form">
          {props.children}
          <div className="buttons">
            <button type="button" className="second" onClick={props.close}>
              {screens.form.no}
            </button>
          </div>
        </div>
      </Section>
    </div>
  )
}
