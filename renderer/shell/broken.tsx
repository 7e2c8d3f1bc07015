import { Component, type ReactNode } from 'react'
import { WordsContext } from '../words.ts'

/** A page that fails shows what to do instead of an empty screen; the rest of the book goes on working. */
export class Broken extends Component<{ children: ReactNode }, { broken: boolean }> {
  static override readonly contextType = WordsContext
  declare context: React.ContextType<typeof WordsContext>
  override state = { broken: false }

  static getDerivedStateFromError() {
    return { broken: true }
  }

  override render() {
    if (!this.state.broken) return this.props.children
    const { broken } = this.context.screens
    return (
      <div className="aside-words" role="alert">
        <h1>{broken.heading}</h1>
        <p>{broken.advice}</p>
        <button type="button" onClick={() => this.setState({ broken: false })}>
          {broken.again}
        </button>
      </div>
    )
  }
}
