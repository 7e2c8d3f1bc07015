import type { MouseEvent, ReactNode } from 'react'
import { actingHeader } from '../acting.ts'
import { answer, Refused } from '../api.ts'
import { useWords } from '../words.ts'
import { useSay } from './announcer.tsx'
import { useNamed } from './named.ts'
import { useMayNot } from './reserved.tsx'

/** The name the ledger gives a file, else the last part of its address. */
const nameOf = (response: Response, path: string): string =>
  /filename="([^"]+)"/.exec(response.headers.get('Content-Disposition') ?? '')?.[1] ??
  path.replace(/\?.*/, '').replace(/.*\//, '')

/** Hands a file to the browser to be kept. */
function keep(file: Blob, name: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(file)
  link.download = name
  link.click()
  URL.revokeObjectURL(link.href)
}

/** Asks for the file as whoever acts here, which a link alone cannot say. */
async function take(path: string, name: string | undefined): Promise<void> {
  const response = await fetch(path, { headers: actingHeader() })
  if (!response.ok) await answer(Promise.resolve(response))
  keep(await response.blob(), name ?? nameOf(response, path))
}

interface DownloadProps {
  readonly path: string
  readonly name?: string
  readonly className?: string
  readonly children: ReactNode
}

/** A link to a part of the books as a file, which not everybody may take out: to others it says why. */
export function Download({ path, name, className, children }: DownloadProps) {
  const { screens } = useWords()
  const say = useSay()
  const named = useNamed()
  const reason = useMayNot('exports.take')
  const failed = (error: unknown) => say(error instanceof Refused ? error.message : screens.unreachable)
  const press = (event: MouseEvent) => {
    event.preventDefault()
    if (reason) say(reason)
    else named(() => void take(path, name).catch(failed))
  }
  return (
    <a
      href={path}
      download={name ?? true}
      className={className}
      aria-disabled={reason !== null || undefined}
      onClick={press}
    >
      {children}
    </a>
  )
}
