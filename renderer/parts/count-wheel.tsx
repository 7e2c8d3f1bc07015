/** Degrees of the rim up to each notch: like on a real count wheel the raised parts grow as the count goes up. */
const spans = [20, 24, 28, 32, 36, 40, 44, 48]
const notchDegrees = 11

const point = (degrees: number, radius: number): string => {
  const turn = ((degrees - 90) * Math.PI) / 180
  return `${(12 + radius * Math.cos(turn)).toFixed(2)} ${(12 + radius * Math.sin(turn)).toFixed(2)}`
}

/** The outline of one raised part of the rim, from one notch to the next. */
function raisedPart(index: number): string {
  const before = spans.slice(0, index).reduce((sum, span) => sum + span + notchDegrees, 0)
  const [from, to] = [before + notchDegrees / 2, before + notchDegrees / 2 + (spans[index] ?? 0)]
  const [outer, inner] = [10.6, 6.9]
  return `M${point(from, inner)}L${point(from, outer)}A${outer} ${outer} 0 0 1 ${point(to, outer)}L${point(to, inner)}A${inner} ${inner} 0 0 0 ${point(from, inner)}Z`
}

/** The square in the middle. */
const arbor = 'M10.4 10.4h3.2v3.2h-3.2Z'

const rim = spans.map((_, index) => raisedPart(index))

/** The house mark: a count wheel with `passed` of its eight parts filled. Decoration: its words always stand beside it. */
export function CountWheel({ passed }: { passed: number }) {
  // Two outlines, not eight: a list of clocks draws a hundred and more of these wheels.
  return (
    <svg className="wheel" viewBox="0 0 24 24" aria-hidden="true">
      <path d={`${rim.slice(0, passed).join('')}${arbor}`} className="passed" />
      <path d={rim.slice(passed).join('')} className="ahead" />
    </svg>
  )
}
