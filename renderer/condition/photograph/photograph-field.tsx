import { type ChangeEvent, type ClipboardEvent, type DragEvent, useRef, useState } from 'react'
import { useShop } from '../../shop.tsx'
import '../condition.css'
import { keepPhotograph } from './keep.ts'

interface PhotographFieldProps {
  /** What the photographs show, for screen readers. */
  readonly what: string
  /** Each file once it is kept. */
  readonly onKept: (hash: string) => void
}

/** What is going on with the files just given. */
interface Progress {
  readonly keeping: string
  readonly kept: number
  readonly refused: readonly string[]
}

const idle: Progress = { keeping: '', kept: 0, refused: [] }

/** Keeps files one after the other, saying which; those that are refused stand with their reason. */
function useKeeping(onKept: (hash: string) => void) {
  const { words } = useShop()
  const [progress, setProgress] = useState(idle)
  // Between two files the page is drawn anew: the second must be added to what the first became part of.
  const latest = useRef(onKept)
  latest.current = onKept
  const keep = async (files: readonly File[]) => {
    setProgress(idle)
    for (const file of files) {
      const name = file.name || words.condition.pasted
      setProgress(before => ({ ...before, keeping: name }))
      const outcome = await keepPhotograph(file, words)
      if ('hash' in outcome) latest.current(outcome.hash)
      setProgress(before =>
        'hash' in outcome
          ? { ...before, kept: before.kept + 1 }
          : { ...before, refused: [...before.refused, words.condition.notKept(name, outcome.why)] },
      )
    }
    setProgress(before => ({ ...before, keeping: '' }))
  }
  return { progress, keep }
}

/** Photographs by file, camera, drop or paste: made small and upright, freed of where they were taken, and kept. */
export function PhotographField({ what, onKept }: PhotographFieldProps) {
  const { condition } = useShop().words
  const { progress, keep } = useKeeping(onKept)
  const drop = (event: DragEvent) => {
    event.preventDefault()
    void keep([...event.dataTransfer.files])
  }
  const paste = (event: ClipboardEvent) => {
    const files = [...event.clipboardData.files]
    if (files.length > 0) event.preventDefault()
    void keep(files)
  }
  return (
    <fieldset
      className="photograph-field"
      onDrop={drop}
      onDragOver={event => event.preventDefault()}
      onPaste={paste}
    >
      <legend className="hidden-words">{condition.addTo(what)}</legend>
      <FileButton label={condition.choose} name={condition.chooseFor(what)} onFiles={keep} />
      <FileButton label={condition.camera} name={condition.cameraFor(what)} onFiles={keep} camera />
      <span className="hint">{condition.dropHint}</span>
      <span role="status">
        {progress.keeping
          ? condition.keeping(progress.keeping)
          : progress.kept > 0 && condition.kept(progress.kept)}
      </span>
      {progress.refused.length > 0 && (
        <ul role="alert" className="refused">
          {progress.refused.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
    </fieldset>
  )
}

interface FileButtonProps {
  readonly label: string
  readonly name: string
  readonly onFiles: (files: readonly File[]) => void
  readonly camera?: boolean
}

/** The browser's own file field, looking like a button. */
function FileButton({ label, name, onFiles, camera = false }: FileButtonProps) {
  const given = ({ target }: ChangeEvent<HTMLInputElement>) => {
    onFiles([...(target.files ?? [])])
    // The same file may be chosen again.
    target.value = ''
  }
  return (
    <label className="button second file-button">
      {label}
      <input
        type="file"
        className="hidden-words"
        aria-label={name}
        accept="image/*"
        {...(camera ? { capture: 'environment' as const } : { multiple: true })}
        onChange={given}
      />
    </label>
  )
}
