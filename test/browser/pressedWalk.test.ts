import { existsSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHROMIUM, type Served, openServed, seriousOn } from './served.js';

/** ms: planning and proving on a busy machine. */
const LONG = 240_000;

interface Profile { readonly flanges: readonly number[]; readonly turns: readonly unknown[]; readonly thickness: number; readonly insideRadius: number }

describe.skipIf(!existsSync(CHROMIUM))('the walk of strokes that are no V bends', () => {
  let server: Served;

  const ask = async (path: string, body?: unknown): Promise<Record<string, unknown[]>> => {
    const answer = await fetch(`${server.url()}${path}`, body === undefined ? {} : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
    return (await answer.json()) as Record<string, unknown[]>;
  };

  const openStep = async (profile: Profile, step: number): Promise<void> => {
    const { parts } = await ask('/api/parts', { profile: { name: 'pressed', width: 120, measure: 'outside', ...profile } });
    const partId = (parts![0] as { id: string }).id;
    await ask('/api/trials', { partId, machineId: 'general', metalId: 'dc01', quantity: 1 });
    let id: string | undefined;
    for (const until = Date.now() + LONG / 2; id === undefined && Date.now() < until; await new Promise((on) => setTimeout(on, 300))) {
      id = ((await ask(`/api/trials?partId=${partId}`))['trials']![0] as { id: string } | undefined)?.id;
    }
    await server.page.goto(`${server.url()}/#/trials/${id!}/steps/${step}`);
    await server.page.locator('.moving-section').waitFor();
  };

  const moveTo = async (share: number): Promise<string> => {
    await server.page.getByLabel('Moment of the stroke').fill(String(share));
    return server.page.locator('.stroke figcaption').innerText();
  };

  beforeAll(async () => {
    server = await openServed('pressed');
  }, LONG);
  afterAll(async () => {
    await server?.close();
  });

  it('a hem of 1.5 mm is pressed from its pre-bend to 3.2 mm', async () => {
    await openStep({ flanges: [60, 10], turns: [{ turn: 180, insideRadius: 0.1 }], thickness: 1.5, insideRadius: 1.5 }, 2);
    const { page } = server;
    const words = await page.locator('.paper').innerText();
    expect(words).toContain('close hem b1');
    expect(words).toContain('Before: the fold at the fingers');
    expect(words).toContain('the flange closes down on whatever lies in it');
    // no figure of a bend in air, and what is measured said once
    expect(words).not.toMatch(/under load|swings up|whips up|bent and released|Depth from touch/);
    expect(words.match(/to the outer tangent of b1/g)).toHaveLength(1);
    const metal = page.locator('.moving-section .metal');
    expect(await moveTo(235)).toMatch(/^the fold to the fingers/);
    const before = await metal.getAttribute('d');
    expect(await moveTo(510)).toMatch(/^the flange is pressed down, ram \d+\.\d\d mm over the die seat/);
    expect(await metal.getAttribute('d')).not.toBe(before);
    expect(await moveTo(690)).toMatch(/^pressed flat, ram 93\.20 mm over the die seat.*bend angle 180\.0°/);
    expect(await page.locator('.moving-section text').textContent()).toBe('3.20 high');
    expect(await seriousOn(page)).toEqual([]);
    expect(server.faults).toEqual([]);
  }, LONG);

  it('an offset of 2.5 mm in 1 mm of sheet: both bends at once to 3.5 mm over both flanges', async () => {
    await openStep({ flanges: [60, 3.5, 60], turns: [90, -90], thickness: 1, insideRadius: 0.5 }, 1);
    const { page } = server;
    const words = await page.locator('.paper').innerText();
    expect(words).toContain('offset b1 and b2');
    expect(words).toContain('Offset, face to face');
    expect(words).not.toMatch(/under load|swings up|bent and released/);
    expect(await moveTo(690)).toMatch(/^pressed: the lands bear on both flanges, ram 88\.50 mm over the die seat, 2\.50 of 2\.50 mm from touch; both bends at bend angle 90\.0°/);
    expect(await page.locator('.moving-section text').textContent()).toBe('3.50 over both');
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    expect(server.faults).toEqual([]);
  }, LONG);
});
