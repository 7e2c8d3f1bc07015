import { clocks } from '../schema/index.ts'

/** The columns by which a list tells one clock from another. */
export const clockInShort = {
  id: clocks.id,
  form: clocks.form,
  maker: clocks.maker,
  serial: clocks.serial,
  trains: clocks.trains,
  duration: clocks.duration,
  dial: clocks.dial,
}
