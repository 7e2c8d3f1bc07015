import { roundingModes } from '../../core/money/div-round.ts'
import { type LineKind, lineKinds } from '../../core/pricing/kinds/index.ts'
import type { Tax as LineTax } from '../../core/pricing/price-input.ts'
import { type LinesState, useEntry, useLines } from '../parts/entry.ts'
import { Choice, DecimalField, FewChoice, TextField, Tick } from '../parts/field.tsx'
import { RemoveLine } from '../parts/remove-line.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

const blank: LineTax = { code: '', rate: '' }
const isBlank = ({ code, rate }: LineTax) => code.trim() === '' && rate.trim() === ''

/** The taxes on one kind of line, as typed. */
const useTaxes = (kind: LineKind, taxes: readonly LineTax[]) =>
  useLines(`tax.byKind.${kind}`, blank, isBlank, taxes)

function useByKind(): Readonly<Record<LineKind, LinesState<LineTax>>> {
  const { byKind } = useShop().settings.tax
  return {
    labour: useTaxes('labour', byKind.labour),
    part: useTaxes('part', byKind.part),
    outside: useTaxes('outside', byKind.outside),
    fee: useTaxes('fee', byKind.fee),
  }
}

/** How tax is worked out, and what is taxed at which rate. */
export function Tax() {
  const { settings, words } = useShop()
  const { tax: said, groups, saved } = words.shop
  const { basis, mode, inclusive, due, aggregate = false } = settings.tax
  const entry = useEntry({ basis, mode, inclusive, due, aggregate }, 'tax')
  const byKind = useByKind()
  const charged = Object.values(byKind).some(({ lines }) => lines.some(({ blank }) => !blank))
  const act = useChange(saved(groups.tax))
  const input = () => ({
    tax: {
      ...entry.value,
      byKind: {
        labour: byKind.labour.written(),
        part: byKind.part.written(),
        outside: byKind.outside.written(),
        fee: byKind.fee.written(),
      },
    },
  })
  return (
    <SettingsForm intro={said.intro} label={groups.tax} act={act} input={input}>
      <div className="tax-kinds">
        {(Object.keys(lineKinds) as LineKind[]).map(kind => (
          <Taxes key={kind} title={said.kinds[kind]} taxes={byKind[kind]} />
        ))}
      </div>
      <p className="quiet">{said.kindsHint}</p>
      {charged && <Tick label={said.inclusive} hint={said.inclusiveHint} {...entry.at('inclusive')} />}
      <FewChoice label={said.due} hint={said.dueHint} choices={said.dues} {...entry.at('due')} />
      <div className="fields">
        <FewChoice label={said.basis} choices={said.bases} {...entry.at('basis')} />
        <Choice
          label={said.mode}
          choices={Object.fromEntries(roundingModes.map(one => [one, said.modes[one]]))}
          {...entry.at('mode')}
        />
      </div>
      <Tick label={said.aggregate} {...entry.at('aggregate')} />
    </SettingsForm>
  )
}

/** The taxes on one kind of line; typing in the last opens the next. */
function Taxes({ title, taxes }: { title: string; taxes: LinesState<LineTax> }) {
  const said = useShop().words.shop.tax
  const labelled = (label: string, index: number) =>
    index === 0 ? label : `${label}, ${said.taxOf(index + 1)}`
  return (
    <fieldset className="tax-kind">
      <legend>{title}</legend>
      {taxes.lines.map(({ key, blank: isLast }, index) => (
        <div key={key} className="tax-line">
          <TextField label={labelled(said.code, index)} hideLabel={index > 0} {...taxes.at(index, 'code')} />
          <DecimalField
            label={labelled(said.rate, index)}
            hideLabel={index > 0}
            unit="%"
            {...taxes.at(index, 'rate')}
          />
          {isLast ? (
            <span />
          ) : (
            <RemoveLine what={`${title}: ${said.taxOf(index + 1)}`} onRemove={() => taxes.remove(index)} />
          )}
        </div>
      ))}
    </fieldset>
  )
}
