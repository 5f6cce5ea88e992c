import type { ReactNode } from 'react';

/** Heading over a ruled part of a sheet, with an optional quiet remark at its right end. */
export function SectionHead({ title, remark }: { readonly title: string; readonly remark?: ReactNode }) {
  return (
    <div className="section-head">
      <h2>{title}</h2>
      {remark ? <span className="quiet">{remark}</span> : null}
    </div>
  );
}
