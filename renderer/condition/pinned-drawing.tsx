import type { Form } from '../../core/vocabulary/clock.ts'
import type { View } from '../../core/vocabulary/intake.ts'
import { Drawing } from './drawings/index.tsx'
import { sheet } from './drawings/kit.tsx'
import type { NumberedPin, Pin } from './pins.ts'

interface PinnedDrawingProps {
  readonly form: Form
  readonly view: View
  readonly pins: readonly NumberedPin[]
  /** The note whose pins stand out. */
  readonly current?: number | null
  /** Where the cross of the keyboard stands. */
  readonly cross?: Pick<Pin, 'x' | 'y'>
}

/** A pin's disc is 23 units across: at the narrowest drawing still more than 24 pixels to hit (WCAG 2.5.8). */
const radius = 11.5

const placed = ({ x, y }: Pick<Pin, 'x' | 'y'>) => `translate(${x * sheet.width} ${y * sheet.height})`

/** The outline drawing with numbered pins on it; for the eye alone, what it shows stands in a list beside it. */
export function PinnedDrawing({ form, view, pins, current = null, cross }: PinnedDrawingProps) {
  return (
    <>
      <Drawing form={form} view={view} />
      <svg
        className="pins"
        viewBox={`0 0 ${sheet.width} ${sheet.height}`}
        aria-hidden="true"
        focusable="false"
      >
        {pins.map(pin => (
          <g
            key={`${pin.number} ${pin.index}`}
            className={pin.number === current ? 'pin current' : 'pin'}
            transform={placed(pin)}
          >
            <circle r={radius} />
            <text textAnchor="middle" dominantBaseline="central">
              {pin.number}
            </text>
          </g>
        ))}
        {cross && (
          <g className="cross" transform={placed(cross)}>
            <path d="M-20 0H-7M7 0H20M0 -20V-7M0 7V20" />
          </g>
        )}
      </svg>
    </>
  )
}
