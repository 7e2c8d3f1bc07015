import { useState } from 'react'
import { currencies } from '../../core/money/currency.ts'
import { openingSettings } from '../../core/shop/defaults.ts'
import { answer, api, Refused } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { Announcer } from '../parts/announcer.tsx'
import { CountWheel } from '../parts/count-wheel.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, DecimalField, TextArea, TextField } from '../parts/field.tsx'
import { useWords } from '../words.ts'
import { currencyOf, guessedPlace, localeIn, locales, named, zoneOf, zones } from './place.ts'

/** The one page of a ledger whose shop is not open yet. */
export function OpenShop() {
  return (
    <Announcer>
      <OpenShopPage />
    </Announcer>
  )
}

const ofTax = 'settings.tax.byKind.'

/** The one tax that is asked about is entered on every kind of line: what is wrong with it is said once, where it was asked. */
function asAsked(error: unknown): never {
  if (!(error instanceof Refused)) throw error
  throw new Refused(
    error.problems.filter(({ field }) => !field.startsWith(ofTax) || field.startsWith(`${ofTax}labour`)),
  )
}

const lines = (text: string) =>
  text
    .split('\n')
    .map(line => line.trim())
    .filter(Boolean)

/** What is typed, its names those of the request so that its problems find their fields. */
function useBasics() {
  const [guess] = useState(guessedPlace)
  return {
    shop: useEntry({ name: '', addressLines: '', phone: '', taxNumber: '' }, 'settings.shop'),
    place: useEntry(guess, 'settings.place'),
    tax: useEntry({ code: '', rate: '' }, 'settings.tax.byKind.labour[0]'),
    prices: useEntry({ benchRate: '' }, 'settings.prices'),
    you: useEntry({ person: '', firstRepairNumber: '1' }),
  }
}

function useOpening() {
  const { openShop } = useWords().screens
  const basics = useBasics()
  const { shop, place, tax, prices, you } = basics
  const act = useAct(
    (input: Parameters<typeof api.shop.open.$post>[0]['json']) =>
      answer(api.shop.open.$post({ json: input })).catch(asAsked),
    { said: () => openShop.done },
  )
  const input = () => {
    const settings = openingSettings({
      ...place.value,
      ...shop.value,
      addressLines: lines(shop.value.addressLines),
      tax: tax.value.code.trim() || tax.value.rate.trim() ? tax.value : null,
      benchRate: prices.value.benchRate,
    })
    return {
      settings: plain(settings),
      person: you.value.person,
      firstRepairNumber: Number(you.value.firstRepairNumber),
    }
  }
  return { basics, act, input }
}

type Plain<T> = T extends readonly (infer Item)[]
  ? Plain<Item>[]
  : T extends object
    ? { -readonly [K in keyof T]: Plain<T[K]> }
    : T

/** The same settings as a copy of one's own, which is how they travel. */
const plain = <T,>(settings: T) => structuredClone(settings) as Plain<T>

function OpenShopPage() {
  const words = useWords()
  const { openShop: said } = words.screens
  const ofShop = words.shop.name
  const { basics, act, input } = useOpening()
  const { shop, place, tax, prices, you } = basics
  return (
    <main className="frontispiece">
      <CountWheel passed={8} />
      <h1>{said.heading}</h1>
      <p className="quiet">{said.advice}</p>
      <ActForm act={act} input={input} focusFirst>
        <h2>{said.shop}</h2>
        <TextField label={said.name} {...shop.at('name')} />
        <TextArea label={said.address} hint={said.addressHint} {...shop.at('addressLines')} />
        <TextField label={ofShop.phone} {...shop.at('phone')} autoComplete="tel" />
        <h2>{said.place}</h2>
        <div className="fields">
          <Choice
            label={said.country}
            choices={named('region', place.value.locale)}
            {...place.at('country')}
            onChange={country =>
              place.set({
                country,
                currency: currencyOf(country),
                timeZone: zoneOf(country, place.value.timeZone),
                locale: localeIn(country, place.value.locale),
              })
            }
          />
          <Choice
            label={said.currency}
            choices={named('currency', place.value.locale, currencies)}
            {...place.at('currency')}
          />
          <Choice label={said.timeZone} choices={zones(place.value.timeZone)} {...place.at('timeZone')} />
          <Choice
            label={said.locale}
            choices={locales(place.value.country, place.value.locale)}
            {...place.at('locale')}
          />
        </div>
        <h2>{said.tax}</h2>
        <p className="quiet">{said.taxAdvice}</p>
        <div className="fields">
          <TextField label={said.taxName} hint={said.taxNameHint} {...tax.at('code')} />
          <DecimalField label={said.taxRate} unit="%" {...tax.at('rate')} />
        </div>
        <TextField label={ofShop.taxNumber} hint={ofShop.taxNumberHint} {...shop.at('taxNumber')} />
        <h2>{said.prices}</h2>
        <DecimalField label={said.benchRate} unit={place.value.currency} {...prices.at('benchRate')} />
        <h2>{said.you}</h2>
        <div className="fields">
          <TextField label={said.person} {...you.at('person')} autoComplete="name" />
          <TextField
            label={said.firstNumber}
            hint={said.firstNumberHint}
            inputMode="numeric"
            {...you.at('firstRepairNumber')}
          />
        </div>
        <div className="buttons">
          <Send act={act}>{said.act}</Send>
        </div>
      </ActForm>
    </main>
  )
}
