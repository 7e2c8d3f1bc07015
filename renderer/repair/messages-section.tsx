import { Instant } from '../parts/figures.tsx'
import { Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import type { Repair } from './repair.ts'

/** What the owner was told, the last first, each as it was said. */
export function MessagesSection({ view: { messages } }: { view: Repair }) {
  const { words } = useShop()
  const { repair } = words
  if (messages.length === 0) return null
  return (
    <Section title={repair.sections.messages}>
      <ul className="contacts">
        {messages.toReversed().map(({ id, at, about, way, text }) => (
          <li key={id}>
            <details>
              <summary>
                <span>
                  <Instant at={at} /> · {words.messageAbouts[about]}, {words.ways[way]}
                </span>
              </summary>
              <p className="several-lines">{text}</p>
            </details>
          </li>
        ))}
      </ul>
    </Section>
  )
}
