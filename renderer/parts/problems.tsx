import {
  createContext,
  type MouseEvent,
  type ReactNode,
  type RefObject,
  useContext,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react'
import type { ShownProblem } from '../api.ts'
import { useWords } from '../words.ts'

/** What was wrong with the form's last try. */
export const Problems = createContext<readonly ShownProblem[]>([])

/** The problem that belongs to the control of this name, if there is one. */
export const useProblem = (name: string): ShownProblem | undefined =>
  useContext(Problems).find(({ field }) => field !== '' && field === name)

/**
 * The name among `names` that a problem's path means: the same, else the first inside it (`owner` means `owner.name`),
 * else the nearest that contains it (`clock.id` means `clock`). Undefined when there is none.
 */
export function controlFor(field: string, names: readonly string[]): string | undefined {
  if (field === '') return undefined
  const inside = (outer: string, name: string) => name.startsWith(`${outer}.`) || name.startsWith(`${outer}[`)
  return (
    names.find(name => name === field) ??
    names.find(name => inside(field, name)) ??
    names.find(name => inside(name, field))
  )
}

const named = (form: HTMLElement) => [...form.querySelectorAll<HTMLElement>('[name]')]

const nameOf = (control: HTMLElement) => control.getAttribute('name') ?? ''

/** The words a control is known by: a group's legend, or its label after the line it stands in. */
function labelOf(control: HTMLElement): string {
  const legend = (group: string) => control.closest(group)?.querySelector('legend')?.textContent
  if (control instanceof HTMLInputElement && control.type === 'radio') return legend('fieldset') ?? ''
  const label = (control as HTMLInputElement).labels?.[0]?.textContent
  return [legend('.line-fields'), label].filter(Boolean).join(', ')
}

/** The label of each problem's control, read off the form once it shows its problems. */
function useLabels(problems: readonly ShownProblem[], list: RefObject<HTMLElement | null>) {
  const [labels, setLabels] = useState<Readonly<Record<string, string>>>({})
  useLayoutEffect(() => {
    const controls = named(list.current?.closest('form') ?? document.body)
    const entries = problems.map(({ field }) => {
      const name = controlFor(field, controls.map(nameOf))
      const control = controls.find(one => nameOf(one) === name)
      return [field, control ? labelOf(control) : ''] as const
    })
    setLabels(Object.fromEntries(entries))
  }, [problems, list])
  return labels
}

/** Puts the focus on the control a problem speaks of. */
function goTo(event: MouseEvent<HTMLAnchorElement>, field: string): void {
  event.preventDefault()
  const controls = named(event.currentTarget.closest('form') ?? document.body)
  const name = controlFor(field, controls.map(nameOf))
  const control = controls.find(one => nameOf(one) === name)
  control?.scrollIntoView({ block: 'center' })
  control?.focus()
}

interface ProblemListProps {
  readonly problems: readonly ShownProblem[]
  /** What can be done about them at once. */
  readonly children?: ReactNode
}

/** Every problem with a way to its field; takes the focus each time the form was tried in vain. */
export function ProblemList({ problems, children }: ProblemListProps) {
  const { screens } = useWords()
  const list = useRef<HTMLDivElement>(null)
  const labels = useLabels(problems, list)
  const said = ({ field, message }: ShownProblem) => [labels[field], message].filter(Boolean).join(': ')
  useEffect(() => {
    if (problems.length > 0) list.current?.focus()
  }, [problems])
  if (problems.length === 0) return null
  return (
    <div className="problems" ref={list} tabIndex={-1} role="alert">
      <h2>{screens.problems.heading(problems.length)}</h2>
      <ul>
        {problems.map(problem => (
          <li key={`${problem.code} ${problem.field}`}>
            {labels[problem.field] ? (
              <a href={`#${problem.field}`} onClick={event => goTo(event, problem.field)}>
                {said(problem)}
              </a>
            ) : (
              said(problem)
            )}
          </li>
        ))}
      </ul>
      <p className="kept">{screens.problems.kept}</p>
      {children}
    </div>
  )
}
