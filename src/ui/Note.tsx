import type { ReactNode } from 'react';

/** A plain remark, or a problem with what to do about it; problems are read out at once. */
export function Note({
  problem = false,
  children,
}: {
  readonly problem?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <div className={`note ${problem ? 'note-problem' : ''}`} role={problem ? 'alert' : 'note'}>
      {children}
    </div>
  );
}
