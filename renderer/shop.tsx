import { createContext, type ReactNode, useContext, useMemo } from 'react'
import type { Words } from '../core/words/en/index.ts'
import { type Formats, formats } from '../core/words/format.ts'
import { useActing } from './acting.ts'
import type { ShopView } from './shop-view.ts'
import { useWords } from './words.ts'

/** The open shop as every part sees it. */
export interface Shop {
  readonly settings: ShopView['settings']
  /** A mark of each group of settings as it stands, given back by whoever changes it. */
  readonly stamps: ShopView['stamps']
  readonly people: ShopView['people']
  readonly formats: Formats
  readonly words: Words
  readonly places: ShopView['places']
  /** The day it is in the shop, by the ledger's clock. */
  readonly today: string
  /** What speaks against the computer's clock; null while nothing does. */
  readonly doubtedClock: ShopView['clock']
  /** Who acts in this window; '' for nobody named. */
  readonly person: string
  /** Names who acts from now on. */
  readonly actAs: (person: string) => void
}

const ShopContext = createContext<Shop | undefined>(undefined)

/** Gives the parts inside it the shop's settings, formats and words. */
export function ShopProvider({ view, children }: { view: ShopView; children: ReactNode }) {
  const words = useWords()
  const { settings, stamps, people, places, today, clock: doubtedClock } = view
  const [person, actAs] = useActing(view)
  const written = useMemo(() => formats(settings.place), [settings.place])
  const shop = {
    settings,
    stamps,
    people,
    places,
    words,
    today,
    doubtedClock,
    person,
    actAs,
    formats: written,
  }
  return <ShopContext value={shop}>{children}</ShopContext>
}

/** The shop's way of writing figures; before the shop is open, the browser's. */
export const useLocale = (): string => useContext(ShopContext)?.settings.place.locale ?? navigator.language

/** Settings, people, formats, words and today's date. Throws outside the open shop: that is a bug. */
export function useShop(): Shop {
  const shop = useContext(ShopContext)
  if (!shop) throw new Error('useShop outside the open shop')
  return shop
}
