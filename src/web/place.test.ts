import { describe, expect, it } from 'vitest';
import { routeOf, to } from './place.js';

describe('the place that an address names', () => {
  it('is the one that was written, whatever letters its ids have', () => {
    const id = 'ä/50 %,#1';
    expect(routeOf(to.part(id))).toEqual({ page: 'part', id });
    expect(routeOf(to.tool('rack/1', id))).toEqual({ page: 'tool', rack: 'rack/1', id });
    expect(routeOf(to.walk('t-1', 12))).toEqual({ page: 'walk', id: 't-1', step: 12 });
    expect(routeOf(to.day(['t-1', 't-2']))).toEqual({ page: 'day', trials: ['t-1', 't-2'] });
    expect([to.fit('f'), to.report('f'), to.board('p'), to.condition('m'), to.pieces('t')].map((hash) => routeOf(hash).page)).toEqual(['fit', 'report', 'board', 'condition', 'pieces']);
    expect(['', '#', '#/', to.parts, '#/parts/'].map((hash) => routeOf(hash).page)).toEqual(Array.from({ length: 5 }, () => 'parts'));
  });

  it('is none, and told as it stands, where the address names nothing', () => {
    for (const address of ['parts/%', 'parts/%E4', 'racks/%zz/x', 'nothing', 'trials/t-1/steps/0', 'trials/t-1/steps/2/3', 'parts/p-1/board/x', 'floor/m/condition/x', 'fit/f/report/x']) {
      expect(routeOf(`#/${address}`)).toEqual({ page: 'nowhere', address });
    }
  });
});
