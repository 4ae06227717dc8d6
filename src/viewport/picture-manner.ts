/**
 * How the bench is drawn. `fine`: soft edges, shadows and the grain of the foam. `plain`: none of these, four times as fast where no
 * graphics card draws. `auto`: fine with a graphics card, else plain.
 */
export type PictureManner = 'auto' | 'fine' | 'plain';

/** How browsers and systems name drawing by the processor. */
const BY_PROCESSOR = /swiftshader|llvmpipe|softpipe|swrast|software|basic render/i;

/** Whether a picture is drawn plainly here. */
export function isPlainHere(manner: PictureManner): boolean {
  return manner === 'plain' || (manner === 'auto' && isDrawnByProcessor());
}

let known: boolean | undefined;

/** Asked once: the answer holds as long as the window. */
function isDrawnByProcessor(): boolean {
  if (known !== undefined) return known;
  const context = document.createElement('canvas').getContext('webgl2');
  if (context === null) return false;
  const names = context.getExtension('WEBGL_debug_renderer_info');
  const name: unknown = context.getParameter(names === null ? context.RENDERER : names.UNMASKED_RENDERER_WEBGL);
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return (known = typeof name === 'string' && BY_PROCESSOR.test(name));
}
