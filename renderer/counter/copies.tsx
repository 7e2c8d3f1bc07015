import { useQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import { answer, api } from '../api.ts'
import { useShop } from '../shop.tsx'

/** How often it is asked how the copies stand while the page is open. */
const askEveryMs = 10_000

type View = Awaited<ReturnType<typeof askCopies>>
const askCopies = () => answer(api.pages.copies.$get())

/** What is to be said of the copies, a sentence each; none where all is well. */
function useSentences(view: View | undefined): string[] {
  const { words, formats } = useShop()
  const { counter } = words
  if (!view) return []
  const { failed, there, folder, lateDays, copiedAt, cameBackAt } = view
  const late = copiedAt ? counter.backupLate(lateDays ?? 0) : counter.backupNever
  return [
    ...(there ? failed.map(({ message }) => message) : [counter.backupAway(folder)]),
    ...(lateDays === null ? [] : [late]),
    ...((!there || failed.length > 0) && lateDays === null && copiedAt
      ? [counter.backupLast(formats.instant(copiedAt))]
      : []),
    ...(cameBackAt && there && failed.length === 0
      ? [counter.backupCameBack(formats.instant(cameBackAt))]
      : []),
  ]
}

/** Says when a copy is late, could not be made, or was made because the folder is there again. Nothing where all is well. */
export function Copies() {
  const { counter } = useShop().words
  const { data } = useQuery({ queryKey: ['copies'], queryFn: askCopies, refetchInterval: askEveryMs })
  const sentences = useSentences(data)
  if (sentences.length === 0) return null
  return (
    <section className="note" role="status" aria-label={counter.backups}>
      {sentences.map(sentence => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p>
        <Link href="/shop/backups">{counter.toBackups}</Link>
      </p>
    </section>
  )
}
