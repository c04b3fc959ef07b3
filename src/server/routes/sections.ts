import type { FastifyInstance } from 'fastify';
import { readOutlineAside } from '../../intake/index.js';
import { placedSection } from '../../shop/index.js';
import { HttpError } from '../httpError.js';
import { tooLarge, waitingReads } from '../limits.js';
import { oneAtATime } from '../oneAtATime.js';

const KINDS = ['punch', 'die', 'machine'] as const;

/** A cross-section out of a DXF drawing, in the frame of what it is of; nothing is kept. After the parts' routes, which take forms in. */
export const sectionRoutes = (app: FastifyInstance): void => {
  const inTurn = oneAtATime(waitingReads, 'Several drawings are being read already; try again in a minute.');

  app.post('/api/sections', async (request) => {
    if (!request.isMultipart()) throw new HttpError(415, 'A drawing comes as a form with one .dxf file.');
    const file = await request.file();
    if (file === undefined) throw new HttpError(400, 'The form has no file.');
    const bytes = await file.toBuffer();
    if (file.file.truncated) throw new HttpError(413, tooLarge);
    if (!/\.dxf$/i.test(file.filename)) throw new HttpError(415, `'${file.filename.slice(0, 200)}' is no DXF file by its name (.dxf).`);
    const field = file.fields['of'];
    const of = KINDS.find((kind) => field !== undefined && 'value' in field && field.value === kind);
    if (of === undefined) throw new HttpError(400, `'of' says what it is a cross-section of: ${KINDS.join(', ')}.`);
    const read = await inTurn(() => readOutlineAside(bytes, file.filename.slice(0, 200)));
    if (!read.ok) throw new HttpError(422, read.failure.sentence);
    const { outline, holes, size, assumptions } = read.value;
    const corners = placedSection(outline, of).map((v) => (v.bulge === 0 ? [v.x, v.y] : [v.x, v.y, v.bulge]));
    const left = holes.length === 0 ? [] : [`${holes.length === 1 ? 'One hole was' : `${holes.length} holes were`} left out: a cross-section is its outer line.`];
    return { corners, size, assumptions: [...assumptions.map(({ sentence }) => sentence), ...left] };
  });
};
