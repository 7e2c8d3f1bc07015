import { isInShop } from '../../core/standing/stages.ts'
import { Section } from '../parts/page.tsx'
import { AgainHere, Cover } from '../register/warranty-today.tsx'
import { useShop } from '../shop.tsx'
import type { Repair } from './repair.ts'

/** The warranty given for this repair, what it says today and why; once the clock was collected, the way back in. */
export function WarrantySection({ view }: { view: Repair }) {
  const { words, formats } = useShop()
  const { repair } = words
  const { given, cover } = view.warranty
  const collected = !isInShop(view.standing.stage)
  if (!given && !collected) return null
  return (
    <Section title={repair.sections.warranty}>
      {given ? (
        <p>
          {words.scopes[given.scope]}: {repair.givenTo(formats.date(given.lastDay))}
        </p>
      ) : (
        <p className="quiet">{repair.noWarranty}</p>
      )}
      {given && cover && <Cover number={view.repair.number} cover={cover} exclusions={given.exclusions} />}
      {collected && (
        <AgainHere
          inShop={view.clockHere}
          clockId={view.clock.id}
          comebackOf={given ? view.repair.number : null}
        />
      )}
    </Section>
  )
}
