import { Dialog } from '../parts/confirm.tsx'
import { useRemembered } from '../remembered.ts'
import { useWords } from '../words.ts'
import { singleKeys } from './keys.ts'

/** The keys that work on every page, and the switch for those that are a single key. */
export function Help({ onClose }: { onClose: () => void }) {
  const { keys } = useWords().screens
  const [single, setSingle] = useRemembered(singleKeys.name)
  return (
    <Dialog title={keys.heading} onClose={onClose}>
      <dl className="keys">
        {keys.list.map(one => (
          <KeyLine key={one.does} {...one} />
        ))}
      </dl>
      <label className="tick">
        <input
          type="checkbox"
          checked={single !== singleKeys.off}
          onChange={event => setSingle(event.target.checked ? '' : singleKeys.off)}
        />
        <span>
          {keys.single}
          <br />
          <small className="quiet">{keys.singleHint}</small>
        </span>
      </label>
      <div className="buttons">
        <button type="button" onClick={onClose}>
          {keys.close}
        </button>
      </div>
    </Dialog>
  )
}

function KeyLine({ keys, does }: { keys: readonly string[]; does: string }) {
  return (
    <>
      <dt>{keys.map(key => (key === '…' ? ' … ' : <kbd key={key}>{key}</kbd>))}</dt>
      <dd>{does}</dd>
    </>
  )
}
