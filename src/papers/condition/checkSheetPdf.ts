import { type ConditionFigures, type ConditionRecord, type ConditionState, type Machine, stateOf } from '../../shop/index.js';
import { bytesOf, openDocument } from '../document.js';
import { drawPicture } from '../drawPicture.js';
import { type Block, flow } from '../flow.js';
import { type GridCell, type GridColumn, drawRow } from '../grid.js';
import { INNER, type Pages, aboveStrip, columnsFrom, newPages } from '../pages.js';
import { type Doc, box, heading, line, rule } from '../paper.js';
import { drawRows, stripArea } from '../titleBlock.js';
import { CHECK_GROUPS } from './checkLines.js';
import { wearPlan } from './wearPlan.js';

export interface CheckSheetOptions {
  readonly date?: string;
  readonly who?: string;
  readonly revision?: string;
}

const SIZE = 2.5;
const COLUMNS: readonly GridColumn[] = [{ width: 62 }, { width: 92 }, { width: 20 }, { width: 46 }, { width: 47 }];
/** mm: a row that is written in by hand. */
const BY_HAND = 7;
/** Places of a wear map and test bends that a blank sheet offers. */
const PLACES = 11;
const BENDS = 4;

const NOT_KNOWN = 'not known';

/** What was found, as it stands in a filled sheet; a blank one leaves it open. */
const told = (filled: boolean, state: ConditionState | null, of: (state: ConditionState) => string | null): GridCell => {
  if (!filled || state === null) return { words: '', size: SIZE };
  const found = of(state);
  return found === null ? { words: NOT_KNOWN, size: SIZE } : { words: found, size: SIZE, bold: true };
};

/** Upright lines between the columns, so that a hand knows where to write. */
const uprights = (doc: Doc, columns: readonly GridColumn[], from: number, to: number): void => {
  let x = INNER.x;
  for (const { width } of columns) {
    x += width;
    rule(doc, x, from, x, to, 'rule');
  }
};

const drawChecks = (pages: Pages, machine: Machine, record: ConditionRecord | null): void => {
  const { doc } = pages;
  const filled = record !== null;
  pages.begin('readings');
  let { y } = INNER;
  line(doc, `Condition of ${machine.name}`, INNER.x, y, INNER.width, { size: 5, bold: true });
  y += 7.4;
  const plate = record?.plate;
  const open = (value: string | null | undefined): string => (filled ? (value === null || value === undefined || value === '' ? NOT_KNOWN : value) : '');
  const cells: readonly (readonly [string, string])[] = [
    ['Serial number', open(plate?.serial)], ['Year', open(plate?.year?.toFixed(0))], ['Force on the plate, kN', open(plate?.force === null || plate?.force === undefined ? null : (plate.force / 1000).toFixed(0))],
    ['Mass, kg', open(plate?.mass?.toFixed(0))], ['Manuals', open(record?.manuals)], ['Supply', open(record?.supply)],
  ];
  const wide = INNER.width / cells.length;
  cells.forEach(([name, value], i) => {
    const area = { x: INNER.x + i * wide, y, width: wide, height: 9 };
    box(doc, area, 'edge');
    line(doc, name, area.x + 1.2, y + 0.8, wide - 2.4, { size: 1.9 });
    line(doc, value, area.x + 1.2, y + 4, wide - 2.4, { size: 2.8, bold: true });
  });
  y += 11;
  const day = (state: ConditionState | null | undefined): string => (state ? `, ${state.date}, ${state.by}` : '');
  const head: GridCell[] = ['What', 'How', 'Unit', `As found${day(record?.asFound)}`, `After overhaul${day(record?.overhauled)}`].map((words) => ({ words, size: SIZE, bold: true }));
  y += drawRow(doc, COLUMNS, head, INNER.x, y);
  const top = y;
  for (const group of CHECK_GROUPS) {
    y += drawRow(doc, COLUMNS, [{ words: group.heading, size: 2.3, bold: true }, ...COLUMNS.slice(1).map((): GridCell => ({ words: '' }))], INNER.x, y, 4.6);
    for (const { what, how, unit, found } of group.lines) {
      y += drawRow(doc, COLUMNS, [
        { words: what, size: SIZE }, { words: how, size: 2.2 }, { words: unit, size: SIZE },
        told(filled, record?.asFound ?? null, found), told(filled, record?.overhauled ?? null, found),
      ], INNER.x, y, filled ? 5.4 : BY_HAND);
    }
  }
  uprights(doc, COLUMNS, top, y);
};

const WEAR: readonly GridColumn[] = [{ width: 24 }, { width: 21 }, { width: 21 }, { width: 21 }, { width: 21 }];
const BEND: readonly GridColumn[] = [{ width: 20 }, { width: 44 }, { width: 16 }, { width: 14 }, { width: 18 }, { width: 14 }, { width: 14 }, { width: 14 }];

const drawWear = (pages: Pages, machine: Machine, record: ConditionRecord | null): void => {
  const { doc } = pages;
  pages.begin('wear map and test bends');
  let { y } = INNER;
  const rowAt = (columns: readonly GridColumn[], words: readonly string[], x: number, at: number, least: number, bold = false): number =>
    drawRow(doc, columns, words.map((w): GridCell => ({ words: w, size: bold ? 2.2 : SIZE, bold })), x, at, least);
  const mm = (value: number | null | undefined): string => (record === null ? '' : value === null || value === undefined ? NOT_KNOWN : value.toFixed(3));
  // left: the map as a table
  y += heading(doc, 'Wear of bed and ram seats', INNER.x, y, 108);
  line(doc, 'Heights over one level line, up is plus, mm; the ram at pressing height', INNER.x, y, 108, { size: 2.2 });
  y += 4;
  y += rowAt(WEAR, ['From the middle, right is plus', 'Bed, as found', 'Ram, as found', 'Bed, after', 'Ram, after'], INNER.x, y, 6, true);
  const top = y;
  const places = record === null
    ? Array.from({ length: PLACES }, (_, i) => Math.round(((i / (PLACES - 1) - 0.5) * (machine.length - 50)) / 10) * 10)
    : [...new Set([...record.asFound.wear, ...(record.overhauled?.wear ?? [])].map((p) => p.along))].sort((a, b) => a - b);
  for (const along of places) {
    if (y + BY_HAND > aboveStrip()) break;
    const [a, b] = [record?.asFound.wear.find((p) => p.along === along), record?.overhauled?.wear.find((p) => p.along === along)];
    y += rowAt(WEAR, [along.toFixed(0), mm(a?.bed), mm(a?.ram), record?.overhauled === null ? '' : mm(b?.bed), record?.overhauled === null ? '' : mm(b?.ram)], INNER.x, y, record === null ? BY_HAND : 5);
  }
  let x = INNER.x;
  for (const { width } of WEAR) rule(doc, (x += width), top, x, y, 'rule');
  // right: its picture, the bends, the instruments
  const right = INNER.x + 114;
  let r = INNER.y;
  if (record !== null) {
    r += heading(doc, record.overhauled === null ? 'The seats as found' : 'The seats after the overhaul', right, r, 150);
    drawPicture(doc, wearPlan(stateOf(record), machine.length, 153, 36), right, r);
    r += 38;
  }
  r += heading(doc, 'Test bends: one depth, three places; degrees of included angle', right, r, 150);
  r += rowAt(BEND, ['Load', 'Metal', 'Thick, mm', 'V, mm', 'Length, mm', 'Left', 'Middle', 'Right'], right, r, 5, true);
  const bendTop = r;
  const degrees = (value: number | null): string => (value === null ? NOT_KNOWN : value.toFixed(1));
  const bends = record === null ? Array.from({ length: BENDS }, (_, i) => [i < 2 ? 'light' : 'heavy', '', '', '', '', '', '', ''])
    : ([['as found', record.asFound], ['after', record.overhauled]] as const).flatMap(([when, state]) => (state?.testBends ?? []).map((b) =>
        [`${b.load}, ${when}`, b.metal, String(b.thickness), String(b.v), String(b.length), degrees(b.includedAngles.left), degrees(b.includedAngles.middle), degrees(b.includedAngles.right)]));
  for (const row of bends) r += rowAt(BEND, row, right, r, record === null ? BY_HAND : 5);
  let bx = right;
  for (const { width } of BEND) rule(doc, (bx += width), bendTop, bx, r, 'rule');
  r += 4;
  r += heading(doc, 'Instruments and the day of their last calibration', right, r, 150);
  const INSTRUMENTS: readonly GridColumn[] = [{ width: 104 }, { width: 49 }];
  const instruments = record === null ? [['', ''], ['', ''], ['', '']] : stateOf(record).instruments.map(({ what, calibrated }) => [what, calibrated ?? NOT_KNOWN]);
  for (const row of instruments) r += rowAt(INSTRUMENTS, row, right, r, record === null ? BY_HAND : 5);
  if (record === null) {
    r += 4;
    r += heading(doc, 'Remarks', right, r, 150);
    for (let k = 0; k < 3; k++) rule(doc, right, (r += 8), right + 153, r, 'rule');
  }
};

const pm = (value: number | null | undefined): string => (value === null || value === undefined ? NOT_KNOWN : `plus or minus ${value.toFixed(3)} mm`);

/** The promises in words: what setting corrects, what placing avoids, what stays. */
const resultBlocks = (f: ConditionFigures, record: ConditionRecord): Block[] => {
  const note = (words: string): { words: string; style: { size: number } } => ({ words, style: { size: 2.6 } });
  const { corrected, elsewhere, inTheMiddle } = f;
  return [
    {
      heading: `What follows, ${f.asOf}`,
      paragraphs: [
        note(corrected ? `Over all of the bed that was measured the depth along a bend differs by ${pm(corrected.asIs)}. A tilt of ${corrected.tilt.toFixed(3)} mm over 1,000 mm and a crowning of ${corrected.crowning.toFixed(3)} mm, as far as these were found to work, leave ${pm(corrected.left)}. What they correct bounds no promise.` : 'The wear of bed and ram seats is not known: no tolerance that hangs on a bend angle is promised.'),
        note(`Work of ${f.length} mm meets ${pm(inTheMiddle?.left)} in the middle of the bed${elsewhere ? `, and ${pm(elsewhere.fit.left)} from ${elsewhere.window[0].toFixed(0)} to ${elsewhere.window[1].toFixed(0)} mm. Where the stations stand bounds the promise.` : '; where it would meet least is not known.'}`),
        note(`The ram comes back within ${pm(f.scatter)}. This stays wherever the work stands and bounds the promise.`),
        ...(f.driftPerSecond === null ? [] : [note(`At rest the ram sinks ${f.driftPerSecond.toFixed(3)} mm in a second.`)]),
        note('Fitted so that the largest distance left is least (minimax); seats taken as straight between readings, crowning as a parabola between the side frames that only lifts.'),
      ],
    },
    { heading: 'Not known, so not promised', paragraphs: f.notMeasured.map(({ what, so }) => ({ words: `${what}: ${so}.`, sign: '?', style: { size: 2.6 } })) },
    { heading: 'Overhaul', paragraphs: record.overhaul === '' ? [] : [note(record.overhaul)] },
    { heading: 'Remarks', paragraphs: [record.asFound, ...(record.overhauled ? [record.overhauled] : [])].filter(({ remarks }) => remarks !== '').map(({ date, remarks }) => note(`${date}: ${remarks}`)) },
  ].filter(({ paragraphs }) => paragraphs.length > 0);
};

const CAUTION_WORDS = [
  'Readings under a moving ram are for trained people only, with the machine blocked or guarded as its manual and the local rules say; hands stay clear of the pinch.',
  'Cracks, weld repairs, guarding and stopping time are for a competent person to judge. A machine with a crack stands still until then.',
  'Measuring force: never beyond the rating on the plate, on a block that bears it, with nobody in line with it.',
  'What is left open is not known: it is never taken as none and never as new.',
  'This sheet records what was measured on a day. It is no acceptance test: such tests are described in ASME B5.55M and GB/T 33644, those of axes in ISO 230-1 and ISO 230-2 (the last two named from memory); no tolerance of theirs is used here.',
];

/**
 * The check sheet of a machine's condition (A4 lying): with a record filled in and with what follows from it, without one blank to be written in
 * by hand.
 */
export const checkSheetPdf = async (machine: Machine, filled: { readonly record: ConditionRecord; readonly figures: ConditionFigures } | null, options: CheckSheetOptions = {}): Promise<Uint8Array> => {
  const { date = '', who = '', revision = '' } = options;
  const doc = openDocument(`Condition of ${machine.name}`, who);
  const pages = newPages(doc);
  drawChecks(pages, machine, filled?.record ?? null);
  drawWear(pages, machine, filled?.record ?? null);
  const more = (): ReturnType<typeof columnsFrom> => {
    pages.begin(filled ? 'what follows, cautions' : 'cautions');
    return columnsFrom(INNER.y, 2);
  };
  const cautions: Block = { heading: 'Cautions', paragraphs: CAUTION_WORDS.map((words) => ({ words, sign: '⚠', style: { size: 2.6 } })) };
  flow(doc, [...(filled ? resultBlocks(filled.figures, filled.record) : []), cautions], more(), more);
  pages.names.forEach((name, k) => {
    doc.switchToPage(k);
    drawRows(doc, [
      [{ share: 2.6, label: 'Machine', value: machine.name, bold: true }, { share: 1, label: 'Revision', value: revision, bold: true }, { share: 2.2, label: 'What', value: `check sheet: ${name}`, bold: true }],
      [
        { share: 2, label: 'Who', value: who }, { share: 1.2, label: 'Date', value: date }, { share: 1.8, label: 'Promises rest on', value: filled?.figures.asOf ?? '' },
        { share: 1.2, label: 'Sheet', value: `sheet ${k + 1} of ${pages.names.length}` },
      ],
    ], stripArea());
  });
  return bytesOf(doc);
};
