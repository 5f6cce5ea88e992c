import type { ReactNode } from 'react';

export interface DisclosureProps {
  readonly title: string;
  /** What stands inside, in a few words, so that it need not be opened to be known. */
  readonly remark?: string;
  readonly children: ReactNode;
}

/** A ruled line that opens what is needed less often. */
export function Disclosure({ title, remark = '', children }: DisclosureProps) {
  return (
    <details className="disclosure">
      <summary>
        <span>{title}</span>
        <span className="quiet">{remark}</span>
      </summary>
      <div className="disclosure-body">{children}</div>
    </details>
  );
}
