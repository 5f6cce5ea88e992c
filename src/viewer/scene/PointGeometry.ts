import { extend } from '@react-three/fiber';
import { BufferAttribute, BufferGeometry } from 'three';

class PositionGeometry extends BufferGeometry {
  constructor(pointsMm: Float32Array) {
    super();
    this.setAttribute('position', new BufferAttribute(pointsMm, 3));
  }
}

/** A geometry of bare points as an element of the scene; other points make another geometry. */
export const PointGeometry = extend(PositionGeometry);
