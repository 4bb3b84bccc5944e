import { Component, type ReactNode } from 'react';
import { say } from '../words/say.ts';
import { Failed } from './states.tsx';

type State = { readonly message: string | undefined };

/** A fault of a page's own code stays in that page: the rest of the window goes on, and the farm file is untouched. */
export class CaughtFault extends Component<{ readonly children: ReactNode }, State> {
  override state: State = { message: undefined };

  static getDerivedStateFromError(error: unknown): State {
    return { message: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.message === undefined) return this.props.children;
    return (
      <div className="page">
        <Failed
          message={say('This page could not be drawn: {message} Your records are untouched.', { message: this.state.message })}
          retry={() => this.setState({ message: undefined })}
        />
      </div>
    );
  }
}
