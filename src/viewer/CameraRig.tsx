import { useThree } from '@react-three/fiber';
import { useLayoutEffect } from 'react';
import { OrthographicCamera } from 'three';
import { pixelsPerMm, standOffMm, viewAxes, type OrbitView, type PartBox } from './orbitView';

/** Puts the scene's camera where the view says, and draws one frame. */
export function CameraRig({ view, box }: { readonly view: OrbitView; readonly box: PartBox }) {
  const camera = useThree((state) => state.camera);
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    if (!(camera instanceof OrthographicCamera) || size.width === 0 || size.height === 0) return;
    const { up, toEye } = viewAxes(view);
    const away = standOffMm(view, box);
    camera.position.set(
      view.targetMm[0] + away * toEye[0],
      view.targetMm[1] + away * toEye[1],
      view.targetMm[2] + away * toEye[2],
    );
    camera.up.set(...up);
    camera.near = 0;
    camera.far = 2.2 * away;
    camera.zoom = pixelsPerMm(view, size.width, size.height);
    camera.lookAt(...view.targetMm);
    camera.updateProjectionMatrix();
    invalidate();
  }, [camera, size, invalidate, view, box]);
  return null;
}
