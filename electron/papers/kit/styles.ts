import type { Style } from './typesetter.ts'

/** The colours of a printed paper: ink, lighter ink, hairlines, the ledger's margin rule. Text inks keep 7:1 and 5:1 on white. */
export const inks = { ink: '#1c2630', soft: '#55616b', hair: '#b9c3c6', margin: '#b4483d' } as const

/** Every way text is set on papers, in points. */
export const styles = {
  shop: { face: 'heading', size: 16, leading: 21, ink: inks.ink },
  title: { face: 'heading', size: 23, leading: 30, ink: inks.ink },
  halfTitle: { face: 'heading', size: 17, leading: 23, ink: inks.ink },
  label: { face: 'strong', size: 8, leading: 13, ink: inks.soft },
  body: { face: 'text', size: 9.5, leading: 13, ink: inks.ink },
  strong: { face: 'strong', size: 9.5, leading: 13, ink: inks.ink },
  total: { face: 'strong', size: 11, leading: 16, ink: inks.ink },
  note: { face: 'text', size: 8.5, leading: 11, ink: inks.ink },
  small: { face: 'text', size: 8, leading: 10.5, ink: inks.soft },
  big: { face: 'text', size: 12, leading: 16.5, ink: inks.ink },
  bigStrong: { face: 'strong', size: 12, leading: 16.5, ink: inks.ink },
  heading: { face: 'heading', size: 12, leading: 17, ink: inks.ink },
  letter: { face: 'text', size: 10.5, leading: 15, ink: inks.ink },
  foot: { face: 'text', size: 7.5, leading: 10, ink: inks.soft },
} as const satisfies Record<string, Style>
