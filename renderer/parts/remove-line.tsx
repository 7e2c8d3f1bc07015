import { useShop } from '../shop.tsx'

/** Takes a line away. */
export function RemoveLine({ what, onRemove }: { what: string; onRemove: () => void }) {
  const { form } = useShop().words.screens
  return (
    <button type="button" className="plain remove" aria-label={form.remove(what)} onClick={onRemove}>
      ×
    </button>
  )
}
