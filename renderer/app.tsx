import { useQuery } from '@tanstack/react-query'
import { answer, api, Refused } from './api.ts'
import { openingPage } from './pages.ts'
import { Announcer } from './parts/announcer.tsx'
import { Fetched } from './parts/fetched.tsx'
import { AskWho } from './shell/ask-who.tsx'
import { Book } from './shell/book.tsx'
import { OpenShop } from './shell/open-shop.tsx'
import { ShopProvider } from './shop.tsx'
import { useWords } from './words.ts'

/** True where the ledger cannot be opened as it stands, and its one page asks what is to be done. */
const isNotOpen = (error: Error | null) =>
  error instanceof Refused && error.problems.some(({ code }) => code === 'ledger.notOpen')

/** The whole ledger: asks what shop this is, opens the book, or asks for the few facts a new shop needs. */
export function App() {
  const { screens } = useWords()
  const { data, error } = useQuery({ queryKey: ['shop'], queryFn: () => answer(api.pages.shop.$get()) })
  if (isNotOpen(error)) return <Fetched of={openingPage} />
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
