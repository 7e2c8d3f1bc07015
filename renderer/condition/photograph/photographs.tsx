import { type ReactNode, useState } from 'react'
import { Dialog } from '../../parts/confirm.tsx'
import { useShop } from '../../shop.tsx'
import '../condition.css'

/** Where a kept photograph is served. */
const photographPath = (hash: string) => `/photographs/${hash}`

/** A photograph to be shown; `key` tells it from another. */
interface Shown {
  readonly key: string | number
  readonly hash: string
  /** What is written below it. */
  readonly below?: ReactNode
}

interface PhotographsProps {
  /** What they show, for screen readers. */
  readonly what: string
  readonly photographs: readonly Shown[]
}

/** Photographs in a row, each to be enlarged; nothing where there are none. */
export function Photographs({ what, photographs }: PhotographsProps) {
  const { condition } = useShop().words
  if (photographs.length === 0) return null
  return (
    <ul className="photographs">
      {photographs.map(({ key, hash, below }, index) => (
        <li key={key}>
          <Thumbnail hash={hash} what={condition.photographOf(index + 1, what)} />
          {below}
        </li>
      ))}
    </ul>
  )
}

function Thumbnail({ hash, what }: { hash: string; what: string }) {
  const { condition, screens } = useShop().words
  const [open, setOpen] = useState(false)
  const close = () => setOpen(false)
  return (
    <>
      <button
        type="button"
        className="thumbnail"
        aria-label={condition.enlarge(what)}
        onClick={() => setOpen(true)}
      >
        <img src={photographPath(hash)} alt="" loading="lazy" />
      </button>
      {open && (
        <Dialog title={what} onClose={close}>
          <img className="enlarged" src={photographPath(hash)} alt={what} />
          <div className="buttons">
            <button type="button" className="second" onClick={close}>
              {screens.form.close}
            </button>
          </div>
        </Dialog>
      )}
    </>
  )
}
