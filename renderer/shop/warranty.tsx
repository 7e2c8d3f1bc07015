import { useState } from 'react'
import { type Exclusion, exclusions, type Scope, scopes } from '../../core/vocabulary/work.ts'
import { useEntry } from '../parts/entry.ts'
import { Choice, DecimalField, FewChoice, Tick } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** A term as typed; no length, no warranty. */
interface TypedTerm {
  readonly length: string
  readonly unit: 'months' | 'days'
}

type TypedTerms = Readonly<Record<Scope, TypedTerm>>

/** The scopes that can have a term: `none` says that there is no warranty. */
const covered = scopes.filter(scope => scope !== 'none')

function useTerms() {
  const { terms } = useShop().settings.warranty
  const [typed, setTyped] = useState<TypedTerms>(() => {
    const term = (scope: Scope): TypedTerm => {
      const kept = terms[scope]
      return kept ? { length: String(kept.length), unit: kept.unit } : { length: '', unit: 'months' }
    }
    return Object.fromEntries(scopes.map(scope => [scope, term(scope)])) as Record<Scope, TypedTerm>
  })
  const kept = (scope: Scope) => {
    const { length, unit } = typed[scope]
    return length.trim() === '' ? null : { length: Number(length), unit }
  }
  return {
    typed,
    set: (scope: Scope, change: Partial<TypedTerm>) =>
      setTyped({ ...typed, [scope]: { ...typed[scope], ...change } }),
    kept: () => ({
      overhaul: kept('overhaul'),
      service: kept('service'),
      repair: kept('repair'),
      'set-up': kept('set-up'),
      none: null,
    }),
  }
}

/** How long the shop answers for its work, from when, and for what not. */
export function Warranty() {
  const { settings, words } = useShop()
  const { warranty: said, groups, saved } = words.shop
  const { startsOn, convention, onComeback, pausesInShop } = settings.warranty
  const entry = useEntry({ startsOn, convention, onComeback, pausesInShop }, 'warranty')
  const terms = useTerms()
  const [without, setWithout] = useState<readonly Exclusion[]>(settings.warranty.exclusions)
  const act = useChange(saved(groups.warranty))
  const input = () => ({
    warranty: {
      ...entry.value,
      terms: terms.kept(),
      exclusions: exclusions.filter(e => without.includes(e)),
    },
  })
  const exclude = (exclusion: Exclusion, yes: boolean) =>
    setWithout(yes ? [...without, exclusion] : without.filter(one => one !== exclusion))
  return (
    <SettingsForm intro={said.intro} label={groups.warranty} act={act} input={input}>
      <fieldset className="terms">
        <legend>{said.terms}</legend>
        {covered.map(scope => (
          <Term key={scope} scope={scope} typed={terms.typed[scope]} onChange={terms.set} />
        ))}
        <p className="quiet">{said.lengthHint}</p>
      </fieldset>
      <FewChoice label={said.startsOn} choices={said.starts} {...entry.at('startsOn')} />
      <FewChoice label={said.convention} choices={said.conventions} {...entry.at('convention')} />
      <FewChoice label={said.onComeback} choices={said.comebacks} {...entry.at('onComeback')} />
      <Tick label={said.pausesInShop} {...entry.at('pausesInShop')} />
      <fieldset className="exclusions">
        <legend>{said.exclusions}</legend>
        {exclusions.map((exclusion, index) => (
          <Tick
            key={exclusion}
            name={`warranty.exclusions[${index}]`}
            label={words.exclusions[exclusion]}
            value={without.includes(exclusion)}
            onChange={yes => exclude(exclusion, yes)}
          />
        ))}
      </fieldset>
    </SettingsForm>
  )
}

interface TermProps {
  readonly scope: Scope
  readonly typed: TypedTerm
  readonly onChange: (scope: Scope, change: Partial<TypedTerm>) => void
}

function Term({ scope, typed, onChange }: TermProps) {
  const { words } = useShop()
  const said = words.shop.warranty
  const name = words.scopes[scope]
  return (
    <div className="term">
      <span aria-hidden="true">{name}</span>
      <DecimalField
        name={`warranty.terms.${scope}.length`}
        label={`${name}: ${said.length}`}
        hideLabel
        value={typed.length}
        onChange={length => onChange(scope, { length })}
      />
      <Choice
        name={`warranty.terms.${scope}.unit`}
        label={`${name}: ${said.unit}`}
        hideLabel
        choices={said.units}
        value={typed.unit}
        onChange={unit => onChange(scope, { unit })}
      />
    </div>
  )
}
