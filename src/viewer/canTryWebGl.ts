/**
 * Whether it is worth starting a scene. Whether a context can really be had is found out by the scene itself, in its
 * worker: the first try may wait a second for the graphics process.
 */
export function canTryWebGl(): boolean {
  return typeof WebGL2RenderingContext !== 'undefined' && typeof Worker !== 'undefined';
}
