import { useThree } from '@react-three/fiber';
import { useLayoutEffect, useState } from 'react';
import { Matrix4, Quaternion, Vector3, type OrthographicCamera } from 'three';
import { pixelsPerMm, standOffMm, viewAxes, type OrbitView, type PartBox } from '../orbitView';

export interface EyeProps {
  readonly view: OrbitView;
  readonly box: PartBox;
  /** The lamp's part of full light. */
  readonly lampShare: number;
}

/** The camera of an orbit view, and the lamp that goes along with it. */
export function Eye({ view, box, lampShare }: EyeProps) {
  const use = useThree((state) => state.set);
  const { width, height } = useThree((state) => state.size);
  const [camera, setCamera] = useState<OrthographicCamera | null>(null);
  useLayoutEffect(() => {
    if (camera !== null) use({ camera });
  }, [camera, use]);

  const axes = viewAxes(view);
  const [right, up, toEye] = [axes.right, axes.up, axes.toEye].map((axis) => new Vector3(...axis)) as [
    Vector3,
    Vector3,
    Vector3,
  ];
  const awayMm = standOffMm(view, box);
  return (
    <>
      <orthographicCamera
        ref={setCamera}
        position={new Vector3(...view.targetMm).addScaledVector(toEye, awayMm)}
        quaternion={new Quaternion().setFromRotationMatrix(new Matrix4().makeBasis(right, up, toEye))}
        near={0}
        far={2.2 * awayMm}
        left={-width / 2}
        right={width / 2}
        top={height / 2}
        bottom={-height / 2}
        zoom={pixelsPerMm(view, width, height)}
        onUpdate={(changed) => changed.updateProjectionMatrix()}
      />
      {/* Over the eye's left shoulder, so that every face looked at is lit and edges show. */}
      <directionalLight
        intensity={lampShare * Math.PI}
        position={toEye.clone().addScaledVector(up, 0.45).addScaledVector(right, -0.35)}
      />
    </>
  );
}
