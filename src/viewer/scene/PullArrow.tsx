import { useMemo } from 'react';
import { Quaternion, Vector3 } from 'three';
import type { Vec3 } from '../../core/mesh/types';
import type { PartBox } from '../orbitView';
import { PointGeometry } from './PointGeometry';

export interface PullArrowProps {
  readonly pull: Vec3;
  readonly box: PartBox;
  readonly color: string;
}

const upward = new Vector3(0, 1, 0);

/** Where an arrow along +y of three's axes is to be put. */
function stand(pull: Vec3, { boxMinMm, boxMaxMm }: PartBox) {
  const low = new Vector3(...boxMinMm);
  const high = new Vector3(...boxMaxMm);
  const half = high.clone().sub(low).multiplyScalar(0.5);
  const toward = new Vector3(...pull).normalize();
  // Distance from the center to the box's own extent along the pull.
  const reach = Math.abs(toward.x) * half.x + Math.abs(toward.y) * half.y + Math.abs(toward.z) * half.z;
  return {
    foot: low
      .clone()
      .lerp(high, 0.5)
      .addScaledVector(toward, reach * 1.05),
    turn: new Quaternion().setFromUnitVectors(upward, toward),
    lengthMm: 0.28 * low.distanceTo(high),
  };
}

/** The way the negative leaves the show face, standing on the box. */
export function PullArrow({ pull, box, color }: PullArrowProps) {
  const { foot, turn, lengthMm } = useMemo(() => stand(pull, box), [pull, box]);
  const headMm = 0.3 * lengthMm;
  const shaft = useMemo(() => new Float32Array([0, 0, 0, 0, lengthMm - headMm, 0]), [lengthMm, headMm]);
  return (
    <group position={foot} quaternion={turn}>
      <lineSegments>
        <PointGeometry args={[shaft]} />
        <lineBasicMaterial color={color} />
      </lineSegments>
      <mesh position={[0, lengthMm - headMm / 2, 0]} scale={[0.16 * lengthMm, headMm, 0.16 * lengthMm]}>
        <coneGeometry args={[0.5, 1, 16]} />
        <meshBasicMaterial color={color} />
      </mesh>
    </group>
  );
}
