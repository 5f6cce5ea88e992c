import { useThree } from '@react-three/fiber';
import { useLayoutEffect } from 'react';
import { OrthographicCamera, type Camera } from 'three';
import { pixelsPerMm, standOffMm, viewAxes, type OrbitView, type PartBox } from './orbitView';

function placeCamera(camera: Camera, view: OrbitView, box: PartBox, widthPx: number, heightPx: number): void {
  if (!(camera instanceof OrthographicCamera) || widthPx === 0 || heightPx === 0) return;
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
  camera.zoom = pixelsPerMm(view, widthPx, heightPx);
  camera.lookAt(...view.targetMm);
  camera.updateProjectionMatrix();
}

/** Puts the scene's camera where the view says, and draws one frame. */
export function CameraRig({ view, box }: { readonly view: OrbitView; readonly box: PartBox }) {
  const camera = useThree((state) => state.camera);
  const { width, height } = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    placeCamera(camera, view, box, width, height);
    invalidate();
  }, [camera, width, height, invalidate, view, box]);
  return null;
}
