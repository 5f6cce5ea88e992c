import { Component, type ReactNode } from 'react';

/** Shows `instead` when the drawing fails (no WebGL): React offers this to class components only. */
export class ViewBoundary extends Component<
  { readonly instead: ReactNode; readonly children: ReactNode },
  { readonly failed: boolean }
> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    return this.state.failed ? this.props.instead : this.props.children;
  }
}
