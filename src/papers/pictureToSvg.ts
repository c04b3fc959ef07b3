import type { Vec2 } from '../geometry/index.js';
import { FILLS, PENS, type PenName } from './pens.js';
import { type Item, type Picture, type Text, patchOf } from './picture.js';

/** The lettering on a page; the widths that the drawing reckons with are those of the first. */
const LETTERING = "'DejaVu Sans Condensed','Source Sans 3','Arial Narrow',sans-serif";

const escape = (s: string): string =>
  s.replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c]!);

/** Thousandths of a millimetre are finer than any printer. */
const number = (v: number): string => String(Math.round(v * 1000) / 1000 + 0);
const point = (p: Vec2): string => `${number(p[0])} ${number(p[1])}`;
const ring = (points: readonly Vec2[]): string => `M${points.map(point).join('L')}Z`;

const pen = (name: PenName): string => {
  const { stroke, width, dash } = PENS[name];
  return (
    `class="pen-${name}" fill="none" stroke="${stroke}" stroke-width="${width}" stroke-linecap="${dash ? 'butt' : 'round'}"` +
    ` stroke-linejoin="round"${dash ? ` stroke-dasharray="${dash.join(' ')}"` : ''}`
  );
};

const letters = (item: Text): string => {
  const patch = item.patch ? `<path class="patch" d="${ring(patchOf(item))}" fill="${FILLS.paper}"/>` : '';
  const turned = item.turned ? ` transform="rotate(${number(-item.turned)} ${point(item.at)})"` : '';
  return (
    `${patch}<text x="${number(item.at[0])}" y="${number(item.at[1])}" font-size="${number(item.size)}"` +
    ` text-anchor="${item.anchor}"${item.bold ? ' font-weight="700"' : ''} fill="${FILLS[item.fill]}"${turned}>` +
    `${escape(item.text)}</text>`
  );
};

const element = (item: Item): string => {
  switch (item.kind) {
    case 'polyline':
      return `<path d="M${item.points.map(point).join('L')}${item.closed ? 'Z' : ''}" ${pen(item.pen)}/>`;
    case 'strokes':
      return item.lines.length === 0
        ? ''
        : `<path d="${item.lines.map(([p, q]) => `M${point(p)}L${point(q)}`).join('')}" ${pen(item.pen)}/>`;
    case 'area':
      return `<path class="fill-${item.fill}" d="${item.rings.map(ring).join('')}" fill="${FILLS[item.fill]}" fill-rule="evenodd"/>`;
    case 'text':
      return letters(item);
    case 'group':
      return `<g data-name="${escape(item.name)}">${item.items.map(element).join('')}</g>`;
  }
};

/**
 * The picture as a stand-alone SVG document in millimetres. `idPrefix` keeps the title's id apart where several
 * pictures stand on one page.
 */
export const pictureToSvg = (picture: Picture, idPrefix = 'picture'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${number(picture.width)} ${number(picture.height)}"` +
  ` width="${number(picture.width)}mm" height="${number(picture.height)}mm" role="img" aria-labelledby="${escape(idPrefix)}-title"` +
  ` font-family="${LETTERING}"><title id="${escape(idPrefix)}-title">${escape(picture.title)}</title>` +
  `${picture.items.map(element).join('')}</svg>`;
