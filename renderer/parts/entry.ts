import { useKept } from './draft.tsx'

/** What a control needs to show and change one value of an entry. */
export interface Bound<T> {
  readonly name: string
  readonly value: T
  readonly onChange: (value: T) => void
}

/** What is being typed, with a binding for each value. */
export interface EntryState<T extends object> {
  readonly value: T
  /** Changes some of it. */
  set(change: Partial<T>): void
  /** The binding of one value: spread it into a field. */
  at<K extends keyof T & string>(key: K): Bound<T[K]>
  /** Empties the form. */
  reset(): void
}

/** `owner` and `name` as `owner.name`. */
const path = (prefix: string, key: string) => (prefix ? `${prefix}.${key}` : key)

/**
 * What is typed into a form. `prefix` makes the controls' names match the paths of the request's problems. With `keptAs` it is part, under that
 * name, of the `Draft` around it.
 */
export function useEntry<T extends object>(initial: T, prefix = '', keptAs?: string): EntryState<T> {
  const [value, setValue] = useKept(keptAs, initial)
  return {
    value,
    set: change => setValue(before => ({ ...before, ...change })),
    at: key => ({
      name: path(prefix, key),
      value: value[key],
      onChange: next => setValue(before => ({ ...before, [key]: next })),
    }),
    reset: () => setValue(initial),
  }
}

/** A list being typed; its last line is always blank, and typing in it opens the next. */
export interface LinesState<T extends object> {
  readonly lines: readonly { readonly key: number; readonly line: T; readonly blank: boolean }[]
  /** Changes some of the line at `index`. */
  set(index: number, change: Partial<T>): void
  at<K extends keyof T & string>(index: number, key: K): Bound<T[K]>
  remove(index: number): void
  /** Takes blank lines out of the middle and returns the written ones, so that `lines[2]` in a problem is the third shown. */
  written(): T[]
  reset(lines?: readonly T[]): void
}

interface Keyed<T> {
  readonly key: number
  readonly line: T
}

/** The lines with one blank line after them. */
function withBlank<T>(lines: readonly Keyed<T>[], blank: T, isBlank: (line: T) => boolean): Keyed<T>[] {
  const last = lines.at(-1)
  if (last && isBlank(last.line)) return [...lines]
  const key = Math.max(-1, ...lines.map(one => one.key)) + 1
  return [...lines, { key, line: blank }]
}

/** Lines typed one after the other. `isBlank` tells a line nobody wrote on; `name` is the list's path, such as `lines`. */
export function useLines<T extends object>(
  name: string,
  blank: T,
  isBlank: (line: T) => boolean,
  initial: readonly T[] = [],
  keptAs?: string,
): LinesState<T> {
  const keyed = (lines: readonly T[]) =>
    withBlank(
      lines.map((line, key) => ({ key, line })),
      blank,
      isBlank,
    )
  const [rows, setRows] = useKept(keptAs, () => keyed(initial))
  const set = (index: number, change: Partial<T>) =>
    setRows(before =>
      withBlank(
        before.map((one, i) => (i === index ? { ...one, line: { ...one.line, ...change } } : one)),
        blank,
        isBlank,
      ),
    )
  return {
    lines: rows.map(one => ({ ...one, blank: isBlank(one.line) })),
    set,
    at: (index, key) => ({
      name: `${name}[${index}].${key}`,
      value: (rows[index]?.line ?? blank)[key],
      onChange: next => set(index, { [key]: next } as unknown as Partial<T>),
    }),
    remove: index =>
      setRows(before =>
        withBlank(
          before.filter((_, i) => i !== index),
          blank,
          isBlank,
        ),
      ),
    written: () => {
      const written = rows.filter(one => !isBlank(one.line))
      setRows(withBlank(written, blank, isBlank))
      return written.map(one => one.line)
    },
    reset: (lines = []) => setRows(keyed(lines)),
  }
}
