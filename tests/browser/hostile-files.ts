import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Where nobody answers: what was asked for there was asked for outside. */
export const ELSEWHERE = 'http://elsewhere.example';

/** A name that would run, were it ever taken as markup; what runs leaves a mark on the window. */
export const NAME_OF_MARKUP = `<img src="${ELSEWHERE}/name.png" onerror="globalThis.broken=1"><script>globalThis.broken=2</script>`;

/** Artwork with everything a drawing can hold that runs or fetches, and a square that can be cut. */
export const HOSTILE_SVG = `<?xml version="1.0" encoding="UTF-8"?>
<?xml-stylesheet href="${ELSEWHERE}/sheet.css" type="text/css"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="60mm" height="60mm" viewBox="0 0 60 60" onload="globalThis.broken=3">
  <title>${NAME_OF_MARKUP.replaceAll('<', '&lt;')}</title>
  <style>@import url("${ELSEWHERE}/import.css"); path { fill: url("${ELSEWHERE}/fill.svg#a"); background: url(${ELSEWHERE}/back.png) }</style>
  <script>globalThis.broken = 4; fetch('${ELSEWHERE}/script')</script>
  <script href="${ELSEWHERE}/script.js"></script>
  <image href="${ELSEWHERE}/image.png" width="10" height="10"/>
  <image xlink:href="${ELSEWHERE}/xlink.png" width="10" height="10" onerror="globalThis.broken=5"/>
  <foreignObject width="10" height="10"><iframe xmlns="http://www.w3.org/1999/xhtml" src="${ELSEWHERE}/frame.html"></iframe></foreignObject>
  <use href="${ELSEWHERE}/use.svg#a"/>
  <a href="javascript:globalThis.broken=6"><path d="M 20 20 H 40 V 40 H 20 Z" onclick="globalThis.broken=7"/></a>
  <set attributeName="href" to="javascript:globalThis.broken=8"/>
  <path id="square" d="M 2 2 H 58 V 58 H 2 Z" style="fill:none;stroke:url(${ELSEWHERE}/stroke.svg#a)"/>
</svg>
`;

/** The tray with names of markup: of the object, of its groups, of its materials, and with a file of materials elsewhere. */
export const hostileObj = (obj: string): string =>
  obj.replace(
    /^o .*$/m,
    `mtllib ${ELSEWHERE}/a.mtl\no ${NAME_OF_MARKUP}\ng ${NAME_OF_MARKUP}\nusemtl ${NAME_OF_MARKUP}`,
  );

interface KitFile {
  readonly project: {
    readonly name: string;
    readonly plain: readonly {
      readonly kind: string;
      readonly source: { readonly hash: string; readonly fileName: string };
      readonly joins?: unknown;
    }[];
  };
  readonly sources: Readonly<Record<string, { readonly fileName: string; readonly base64: string }>>;
}

/** A project file of one part, cut from such artwork; every name in it is markup. */
export function hostileProject(): string {
  const kit = JSON.parse(
    readFileSync(fileURLToPath(new URL('../../samples/kit.foamloft.json', import.meta.url)), 'utf8'),
  ) as KitFile;
  const hash = createHash('sha256').update(HOSTILE_SVG).digest('hex');
  const badge = kit.project.plain.find(({ kind }) => kind === 'artwork');
  const fileName = `${NAME_OF_MARKUP.replaceAll('/', '_')}.svg`;
  return JSON.stringify({
    ...kit,
    project: {
      ...kit.project,
      name: NAME_OF_MARKUP,
      parts: [],
      joins: [],
      plain: [{ ...badge, name: NAME_OF_MARKUP, source: { hash, fileName } }],
    },
    sources: { [hash]: { fileName, base64: Buffer.from(HOSTILE_SVG).toString('base64') } },
  });
}
