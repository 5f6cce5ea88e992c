import { useEffect, useMemo, useState } from 'react';
import type { MoldGeometry } from '../../core/stone/moldGeometry';
import { meshChoices } from '../../pipeline/question';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import type { OtherHalf } from '../../steps/shared/context';
import { pourChoicesOf } from '../../steps/mold/pourChoicesOf';
import { chainedRim } from '../../steps/mold/sizes';
import type { Project } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';

/** Outlines of this session by what they were found from; a rim is a few hundred points. */
type Rims = ReadonlyMap<string, MoldGeometry['rimOutlineMm']>;

export interface OtherHalfFound {
  readonly otherHalf: OtherHalf | null;
  /** There is one, and its rim is not known yet. */
  readonly isAwaited: boolean;
}

/**
 * The other half of the open project's enclosure: the first other project of it that has a pattern, with its rim as it will
 * be when finished. Asked for when the own halves are cast, so that it keeps nobody waiting.
 */
export function useOtherHalf({ id, enclosure }: Project, { desk, mold }: Measuring): OtherHalfFound {
  const workbook = useWorkbook();
  const projects = useWorkbookState((state) => state.projects);
  const listed = projects.find((one) => one.enclosure === enclosure && one.id !== id && one.meshKey !== null);
  const [otherId, changedAt] = [listed?.id ?? null, listed?.changedAt];
  const other = useMemo(
    // An edit of this project makes a new list; the other one is read again only when it has changed itself.
    () => (otherId === null || changedAt === undefined ? null : workbook.readProject(otherId)),
    [otherId, changedAt, workbook],
  );
  const [rims, setRims] = useState<Rims>(() => new Map());
  const asked = useMemo(() => {
    if (other === null || other.pattern === null) return null;
    const part = meshChoices({ inputs: other.inputs, declaredUnit: other.pattern.declaredUnit });
    const pours = pourChoicesOf(other.inputs);
    return { part, pours, key: JSON.stringify([other.pattern.meshKey, part, pours]) };
  }, [other]);

  const ready = mold !== null;
  useEffect(() => {
    if (!ready || asked === null || other === null || rims.has(asked.key)) return undefined;
    let wanted = true;
    const packed = workbook.packedMeshOf(other.id);
    // A rim that cannot be had is no trouble of this project: its sheet says that none is worked out.
    const found =
      packed === null
        ? Promise.resolve(null)
        : desk.client.ask('rim', null, { packed, part: asked.part, pours: asked.pours });
    void found
      .catch(() => null)
      .then((outline) => {
        if (wanted) setRims((before) => new Map(before).set(asked.key, outline));
      });
    return () => {
      wanted = false;
    };
  }, [ready, asked, other, rims, workbook, desk]);

  const otherHalf = useMemo(() => {
    const rim = other === null || asked === null ? null : chainedRim(other, rims.get(asked.key) ?? null);
    return other === null || rim === null ? null : { name: other.name, rim };
  }, [other, asked, rims]);
  return { otherHalf, isAwaited: asked !== null && !rims.has(asked.key) };
}
