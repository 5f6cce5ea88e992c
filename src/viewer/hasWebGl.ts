let known: boolean | null = null;

/** Whether this browser can draw in 3-D; asked once, since every try costs a drawing context. */
export function hasWebGl(): boolean {
  known ??= tryWebGl();
  return known;
}

function tryWebGl(): boolean {
  if (typeof WebGL2RenderingContext === 'undefined') return false;
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
}
