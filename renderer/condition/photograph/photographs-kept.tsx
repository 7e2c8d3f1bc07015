import { useShop } from '../../shop.tsx'
import { PhotographField } from './photograph-field.tsx'
import { Photographs } from './photographs.tsx'

interface PhotographsKeptProps {
  /** What they show, for screen readers. */
  readonly what: string
  readonly hashes: readonly string[]
  readonly onChange: (hashes: string[]) => void
}

/** Photographs that are kept but not yet part of an entry: more can be added, any can be left out again. */
export function PhotographsKept({ what, hashes, onChange }: PhotographsKeptProps) {
  const { condition } = useShop().words
  const below = (hash: string, index: number) => (
    <button
      type="button"
      className="plain"
      aria-label={condition.takeAwayPhotograph(index + 1, what)}
      onClick={() => onChange(hashes.filter(one => one !== hash))}
    >
      {condition.takeAway}
    </button>
  )
  return (
    <>
      <Photographs
        what={what}
        photographs={hashes.map((hash, index) => ({ key: hash, hash, below: below(hash, index) }))}
      />
      <PhotographField what={what} onKept={hash => onChange([...new Set([...hashes, hash])])} />
    </>
  )
}
