import { Component, type ReactNode } from 'react';
import { Button } from '../ui/Button';

export interface ErrorBoundaryProps {
  readonly children: ReactNode;
  /** Saves what can be saved; null when no project is open. */
  readonly onSaveProject: () => void;
}

interface ErrorBoundaryState {
  /** What the browser says; null while all is well. */
  readonly problem: string | null;
}

/** A defect of ours must not cost anybody's work: plain words, and a way to save the project file. */
export class ErrorBoundary extends Component<ErrorBoundaryProps, ErrorBoundaryState> {
  override state: ErrorBoundaryState = { problem: null };

  static getDerivedStateFromError(error: unknown): ErrorBoundaryState {
    return { problem: error instanceof Error ? error.message : 'it gives no details' };
  }

  override render(): ReactNode {
    const { problem } = this.state;
    if (problem === null) return this.props.children;
    return (
      <main className="page">
        <h1>Something went wrong in this page</h1>
        <p>
          This is a fault of the workbook, not of your work. What was saved is still saved. Save the project
          file now to be on the safe side, then load the page again.
        </p>
        <p className="quiet">What the browser says: {problem}</p>
        <div className="button-row">
          <Button kind="main" onClick={this.props.onSaveProject}>
            Save project file
          </Button>
          <Button onClick={() => window.location.reload()}>Load the page again</Button>
        </div>
      </main>
    );
  }
}
