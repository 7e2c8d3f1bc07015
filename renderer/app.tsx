import { useQuery } from '@tanstack/react-query'
import { answer, api } from './api.ts'
import { Announcer } from './parts/announcer.tsx'
import { AskWho } from './shell/ask-who.tsx'
import { Book } from './shell/book.tsx'
import { OpenShop } from './shell/open-shop.tsx'
import { ShopProvider } from './shop.tsx'
import { useWords } from './words.ts'

/** The whole ledger: asks what shop this is, opens the book, or asks for the few facts a new shop needs. */
export function App() {
  const { screens } = useWords()
  const { data, error } = useQuery({ queryKey: ['shop'], queryFn: () => answer(api.pages.shop.$get()) })
  if (!data) return <p className="opening">{error ? screens.unreachable : screens.opening}</p>
  if (!data.open) return <OpenShop />
  return (
    <ShopProvider view={data}>
      <Announcer>
        <AskWho>
          <Book />
        </AskWho>
      </Announcer>
    </ShopProvider>
  )
}
