import { useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField } from '../parts/field.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { useShop } from '../shop.tsx'

interface StrikeOutProps {
  /** What is struck out, for the button's name. */
  readonly what: string
  readonly send: (reason: string) => Promise<unknown>
}

/** Strikes an entry out with a reason; it stays legible. */
export function StrikeOut(props: StrikeOutProps) {
  const { strike } = useShop().words.bench
  return (
    <Opened label={strike.act} look="plain" name={strike.of(props.what)}>
      {close => <StrikeForm {...props} close={close} />}
    </Opened>
  )
}

function StrikeForm({ what, send, close }: StrikeOutProps & { close: () => void }) {
  const { strike } = useShop().words.bench
  const entry = useEntry({ reason: '' })
  const act = useAct((input: { reason: string }) => send(input.reason), {
    said: () => strike.said,
    after: close,
  })
  return (
    <OpenForm act={act} input={() => entry.value} label={strike.of(what)} send={strike.act} close={close}>
      <TextField label={strike.reason} {...entry.at('reason')} />
    </OpenForm>
  )
}
