import type { FastifyInstance } from 'fastify';
import { readOutlineAside } from '../../intake/index.js';
import { placedSection } from '../../shop/index.js';
import type { Context } from '../context.js';
import { HttpError } from '../httpError.js';

const KINDS = ['punch', 'die', 'machine'] as const;

/** A cross-section out of a DXF drawing, in the frame of what it is of; nothing is kept. */
export const sectionRoutes = (app: FastifyInstance, { uploads, inTurn }: Context): void => {
  app.post('/api/sections', async (request, reply) => {
    const { file: { name, bytes, field } } = await uploads.take(request, reply, 'A drawing');
    if (!/\.dxf$/i.test(name)) throw new HttpError(415, `'${name}' is no DXF file by its name (.dxf).`);
    const of = KINDS.find((kind) => field('of') === kind);
    if (of === undefined) throw new HttpError(400, `'of' says what it is a cross-section of: ${KINDS.join(', ')}.`);
    const read = await inTurn(() => readOutlineAside(bytes, name));
    if (!read.ok) throw new HttpError(422, read.failure.sentence);
    const { outline, holes, size, assumptions } = read.value;
    const corners = placedSection(outline, of).map((v) => (v.bulge === 0 ? [v.x, v.y] : [v.x, v.y, v.bulge]));
    const left = holes.length === 0 ? [] : [`${holes.length === 1 ? 'One hole was' : `${holes.length} holes were`} left out: a cross-section is its outer line.`];
    return { corners, size, assumptions: [...assumptions.map(({ sentence }) => sentence), ...left] };
  });
};
