import type { Result } from './result.js';
import type { Segment } from './tool.js';

const figure = (text: string): string => text.replace(',', '.');

/** Segments as they are typed: '500x5 + 20x2 + left 100 reach 30 foot 25'. */
export const segmentsInWords = (segments: readonly Segment[]): string =>
  segments.map(({ length, count, ear }) => {
    const plain = `${length}${count === 1 ? '' : `x${count}`}`;
    return ear === undefined ? plain : `${ear.hand} ${plain} reach ${ear.reach} foot ${ear.footHeight}${ear.slides === undefined ? '' : ` slides ${ear.slides}`}`;
  }).join(' + ');

const NUMBER = '(\\d+(?:[.,]\\d+)?)';
const ITEM = new RegExp(`^(?:(left|right)\\s+)?${NUMBER}(?:\\s*[x×*]\\s*(\\d+))?(?:\\s+reach\\s+${NUMBER}\\s+foot\\s+${NUMBER}(?:\\s+slides\\s+${NUMBER})?)?$`, 'i');

/** Reads them back, lengths in mm; the first item that cannot be read is named. Ranges are the parser's to check. */
export const segmentsFromWords = (text: string): Result<readonly Segment[], string> => {
  const out: Segment[] = [];
  for (const item of text.split('+').map((s) => s.trim()).filter((s) => s !== '')) {
    const found = ITEM.exec(item);
    const [, hand, length, count, reach, foot, slides] = found ?? [];
    if (length === undefined || (hand === undefined) !== (reach === undefined)) {
      return { ok: false, fault: `'${item}' is no segment: write a length in mm, a length x a count, or 'left 100 reach 30 foot 25' for an ear` };
    }
    out.push({
      length: Number(figure(length)), count: Number(count ?? 1),
      ...(hand === undefined ? {} : {
        ear: {
          hand: hand.toLowerCase() as 'left' | 'right', reach: Number(figure(reach!)), footHeight: Number(figure(foot!)),
          ...(slides === undefined ? {} : { slides: Number(figure(slides)) }),
        },
      }),
    });
  }
  return { ok: true, value: out };
};
