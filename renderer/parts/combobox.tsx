import { useCombobox } from 'downshift'
import { type ReactNode, useRef, useState } from 'react'
import { useWords } from '../words.ts'
import type { ControlProps } from './field.tsx'

export interface ComboboxProps<Item> {
  /** Control attributes from a `Field`, or an id and a name of one's own. */
  readonly control: Partial<ControlProps> & { readonly name: string }
  /** The list's name for screen readers. */
  readonly label: string
  readonly text: string
  readonly onText: (text: string) => void
  readonly items: readonly Item[]
  /** `items` belong to what is typed now; while false Enter waits for them. */
  readonly settled: boolean
  readonly itemKey: (item: Item) => string
  readonly show: (item: Item) => ReactNode
  readonly onChoose: (item: Item) => void
  /** The first thing found is chosen by Enter at once; without it the arrow keys choose and plain typing is kept. */
  readonly eager?: boolean
  /** Says so when nothing is found. */
  readonly nothing?: string
  /** What is found for a text that is there from the start is shown at once. */
  readonly startsOpen?: boolean
}

/** The item Enter was pressed for before its results had come. */
function useEarlyEnter<Item>({ text, items, settled, onChoose }: ComboboxProps<Item>) {
  const waiting = useRef<string | null>(null)
  if (waiting.current !== null && waiting.current !== text) waiting.current = null
  if (waiting.current === text && settled) {
    waiting.current = null
    const first = items[0]
    if (first !== undefined) queueMicrotask(() => onChoose(first))
  }
  return waiting
}

const { ItemMouseMove, InputKeyDownArrowDown, InputKeyDownArrowUp, InputKeyDownHome, InputKeyDownEnd } =
  useCombobox.stateChangeTypes
/** Changes by which a person points at an item; all others fall back to where the list begins. */
const pointing: ReadonlySet<unknown> = new Set([
  ItemMouseMove,
  InputKeyDownArrowDown,
  InputKeyDownArrowUp,
  InputKeyDownHome,
  InputKeyDownEnd,
])

/** Where the list's highlight stands: with the item pointed at, wherever later results move it, or else where the list begins. */
function usePointed<Item>({ items, itemKey, eager }: ComboboxProps<Item>) {
  const [pointed, setPointed] = useState<string | null>(null)
  const at = items.findIndex(item => itemKey(item) === pointed)
  return {
    isPointed: at >= 0,
    highlightedIndex: at < 0 && eager && items.length > 0 ? 0 : at,
    point: (index: number, type: unknown) => {
      const item = pointing.has(type) ? items[index] : undefined
      setPointed(item === undefined ? null : itemKey(item))
    },
    forget: () => setPointed(null),
  }
}

/** A text box with what is found below it while typing (APG combobox with a list). Arrows choose, Enter takes, Escape closes, then clears. */
export function Combobox<Item>(props: ComboboxProps<Item>) {
  const {
    control,
    label,
    text,
    onText,
    items,
    settled,
    itemKey,
    show,
    onChoose,
    eager = false,
    nothing,
  } = props
  const { screens } = useWords()
  const early = useEarlyEnter(props)
  const { isPointed, highlightedIndex, point, forget } = usePointed(props)
  const box = useCombobox<Item>({
    items: [...items],
    inputValue: text,
    itemToString: () => text,
    defaultHighlightedIndex: eager ? 0 : -1,
    highlightedIndex,
    onHighlightedIndexChange: ({ highlightedIndex: index, type }) => point(index, type),
    selectedItem: null,
    initialIsOpen: props.startsOpen === true && text !== '',
    ...(control.id ? { inputId: control.id } : {}),
    onSelectedItemChange: ({ selectedItem }) => selectedItem && onChoose(selectedItem),
    stateReducer: (state, { type, changes }) => ({
      ...changes,
      inputValue: state.inputValue,
      // Going away chooses nothing: only Enter and a click do.
      ...(type === useCombobox.stateChangeTypes.InputBlur ? { selectedItem: null } : {}),
    }),
  })
  const open = box.isOpen && text.trim() !== ''
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.key === 'Enter' && eager && !settled && !isPointed) {
      early.current = text
      // What is shown may still belong to fewer letters: nothing of it is taken.
      Object.assign(event.nativeEvent, { preventDownshiftDefault: true })
    }
    // Enter takes what is found; it never sends the form around the box.
    if (event.key === 'Enter') event.preventDefault()
    if (event.key === 'Escape' && text !== '' && (eager || !open)) onText('')
  }
  return (
    <div className="combobox">
      <input
        {...box.getInputProps({
          ...control,
          onKeyDown,
          // Set here, not through the hook's state, so that the cursor keeps its place.
          onChange: event => {
            forget()
            onText((event.target as HTMLInputElement).value)
          },
          'aria-labelledby': undefined,
          autoComplete: 'off',
          spellCheck: false,
        })}
      />
      <ul {...box.getMenuProps({ 'aria-label': label, 'aria-labelledby': undefined })}>
        {open &&
          items.map((item, index) => (
            <li key={itemKey(item)} {...box.getItemProps({ item, index })}>
              {show(item)}
            </li>
          ))}
      </ul>
      {open && settled && items.length === 0 && nothing && <p className="nothing">{nothing}</p>}
      <span className="hidden-words" role="status">
        {open && settled && items.length > 0 && screens.find.count(items.length)}
      </span>
    </div>
  )
}
