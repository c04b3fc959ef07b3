import { type ConditionFigures, type ConditionRecord, type ConditionState, type Machine, ACCURACY_STANDARDS, nothingSet, placeInWords, settingInWords, stateOf } from '../../shop/index.js';
import { bytesOf, openDocument } from '../document.js';
import { drawPicture } from '../drawPicture.js';
import { type Block, flow } from '../flow.js';
import { type GridCell, type GridColumn, drawRow, rowHeight } from '../grid.js';
import { INNER, type Pages, aboveStrip, columnsFrom, newPages } from '../pages.js';
import { type Area, type Doc, FRAME, INSET, box, heading, line, paragraph, rule } from '../paper.js';
import { roundFigure } from '../format.js';
import { drawRows, stripArea } from '../titleBlock.js';
import { CHECK_GROUPS, type CheckLine } from './checkLines.js';
import { wearPlan } from './wearPlan.js';

export interface CheckSheetOptions {
  readonly date?: string;
  readonly who?: string;
  readonly revision?: string;
}

const SIZE = 2.5;
const COLUMNS: readonly GridColumn[] = [{ width: 62 }, { width: 92 }, { width: 20 }, { width: 46 }, { width: 47 }];
/** mm: a row that is written in by hand. */
const BY_HAND = 6.8;
/** Places of a wear map that a blank sheet offers. */
const PLACES = 11;

const NOT_KNOWN = 'not known';

/** What was found, as it stands in a filled sheet; a blank one leaves it open. */
const told = (filled: boolean, state: ConditionState | null, { found: of, choose = '' }: CheckLine): GridCell => {
  if (!filled) return { words: choose, size: 2.1 };
  if (state === null) return { words: '', size: SIZE };
  const found = of(state);
  return found === null ? { words: NOT_KNOWN, size: SIZE } : { words: found, size: SIZE, bold: true };
};

/** Upright lines between the columns, so that a hand knows where to write. */
const uprights = (doc: Doc, columns: readonly GridColumn[], left: number, from: number, to: number): void => {
  let x = left;
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
  y += paragraph(doc, '⚠ For trained people: read the cautions on the next sheet before anything is measured. What is left open is not known: never taken as none and never as new.', INNER.x, y, INNER.width, { size: 2.4 }) + 1;
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
  const day = (state: ConditionState | null | undefined): string => (state ? `, ${state.date}, ${state.by}` : filled ? '' : '\nday, by:');
  const head: GridCell[] = ['What', 'How', 'Unit', `As found${day(record?.asFound)}`, `After overhaul${day(record?.overhauled)}`].map((words) => ({ words, size: SIZE, bold: true }));
  y += drawRow(doc, COLUMNS, head, INNER.x, y);
  for (const group of CHECK_GROUPS) {
    y += drawRow(doc, [{ width: INNER.width }], [{ words: group.heading, size: 2.3, bold: true }], INNER.x, y, 4.6);
    const top = y;
    for (const check of group.lines) {
      const { what, how, unit } = check;
      y += drawRow(doc, COLUMNS, [
        { words: what, size: SIZE }, { words: how, size: 2.2 }, { words: unit, size: SIZE },
        told(filled, record?.asFound ?? null, check), told(filled, record?.overhauled ?? null, check),
      ], INNER.x, y, filled ? 5.4 : BY_HAND);
    }
    uprights(doc, COLUMNS, INNER.x, top, y);
  }
};

const WEAR: readonly GridColumn[] = [{ width: 24 }, { width: 21 }, { width: 21 }, { width: 21 }, { width: 21 }];
const BEND: readonly GridColumn[] = [{ width: 26 }, { width: 37 }, { width: 16 }, { width: 14 }, { width: 18 }, { width: 14 }, { width: 14 }, { width: 14 }];
const INSTRUMENTS: readonly GridColumn[] = [{ width: 82 }, { width: 32 }, { width: 39 }];
const LEFT = 108;
const RIGHT = { x: INNER.x + 114, width: 153 } as const;

/** A table whose rows go on over further sheets rather than being left out. */
type Rows = (columns: readonly GridColumn[], head: readonly string[], body: readonly (readonly string[])[], least: number) => void;

/** Writes tables one under another from `y` down to `lowest`; a sheet more is begun where a row finds no room. */
const tables = (pages: Pages, x: number, y: number, lowest: number): { readonly rows: Rows; readonly at: () => number; readonly skip: (mm: number) => void } => {
  const { doc } = pages;
  const drawn = (columns: readonly GridColumn[], words: readonly string[], least: number, bold = false): void => {
    y += drawRow(doc, columns, words.map((w): GridCell => ({ words: w, size: bold ? 2.2 : SIZE, bold })), x, y, least);
  };
  return {
    rows: (columns, head, body, least) => {
      drawn(columns, head, 5, true);
      let top = y;
      for (const words of body) {
        if (y + Math.max(least, rowHeight(doc, columns, words.map((w) => ({ words: w, size: SIZE })))) > lowest) {
          uprights(doc, columns, x, top, y);
          pages.begin('wear map and test bends (continued)');
          ({ y } = INNER);
          drawn(columns, head, 5, true);
          top = y;
        }
        drawn(columns, words, least);
      }
      uprights(doc, columns, x, top, y);
    },
    at: () => y,
    skip: (mm) => {
      y += mm;
    },
  };
};

/** Wear map, test bends, instruments; what room is left under them. */
const drawWear = (pages: Pages, machine: Machine, record: ConditionRecord | null): readonly Area[] => {
  const { doc } = pages;
  pages.begin('wear map and test bends');
  const sheet = pages.names.length;
  const mm = (value: number | null | undefined): string => (record === null ? '' : value === null || value === undefined ? NOT_KNOWN : figureOf(value));
  // left: the map as a table
  const left = tables(pages, INNER.x, INNER.y + heading(doc, 'Wear of bed and ram seats, mm', INNER.x, INNER.y, LEFT) + 4, FRAME.y + FRAME.height - INSET);
  line(doc, 'Heights over one level line, up is plus; the ram at pressing height', INNER.x, INNER.y + 4.4, LEFT, { size: 2.2 });
  const places = record === null
    ? Array.from({ length: PLACES }, (_, i) => Math.round(((i / (PLACES - 1) - 0.5) * (machine.length - 50)) / 10) * 10)
    : [...new Set([...record.asFound.wear, ...(record.overhauled?.wear ?? [])].map((p) => p.along))].sort((a, b) => a - b);
  const after = (value: number | null | undefined): string => (record?.overhauled === null ? '' : mm(value));
  const right = tables(pages, RIGHT.x, INNER.y, aboveStrip());
  if (record !== null) {
    right.skip(heading(doc, record.overhauled === null ? 'The seats as found, mm' : 'The seats after the overhaul, mm', RIGHT.x, right.at(), RIGHT.width));
    drawPicture(doc, wearPlan(stateOf(record), machine.length, RIGHT.width, 36), RIGHT.x, right.at());
    right.skip(38);
  }
  const least = record === null ? BY_HAND : 5;
  right.skip(heading(doc, 'Test bends: one depth, three places as the operator stands; degrees of included angle', RIGHT.x, right.at(), RIGHT.width));
  const degrees = (value: number | null): string => (value === null ? NOT_KNOWN : `${value.toFixed(1)}°`);
  right.rows(BEND, ['Load, when', 'Metal', 'Thick, mm', 'V, mm', 'Length, mm', 'Left', 'Middle', 'Right'], record === null
    ? ['light, as found', 'light, after', 'heavy, as found', 'heavy, after'].map((what) => [what, '', '', '', '', '', '', ''])
    : ([['as found', record.asFound], ['after', record.overhauled]] as const).flatMap(([when, state]) => (state?.testBends ?? []).map((b) =>
        [`${b.load}, ${when}`, b.metal, String(b.thickness), String(b.v), String(b.length), degrees(b.includedAngles.left), degrees(b.includedAngles.middle), degrees(b.includedAngles.right)])), least);
  right.skip(3);
  right.skip(heading(doc, 'Instruments and the day of their last calibration', RIGHT.x, right.at(), RIGHT.width));
  right.rows(INSTRUMENTS, ['Instrument', 'Calibrated on', 'Used for'], record === null ? ['', '', '', ''].map(() => ['', '', 'as found / after'])
    : ([['as found', record.asFound], ['after', record.overhauled]] as const).flatMap(([when, state]) => (state?.instruments ?? []).map(({ what, calibrated }) => [what, calibrated ?? NOT_KNOWN, when])), least);
  if (record === null) {
    right.skip(3);
    for (const [name, lines] of [['Overhaul: what was done', 2], ['Remarks', 2]] as const) {
      right.skip(heading(doc, name, RIGHT.x, right.at(), RIGHT.width));
      for (let k = 0; k < lines; k++) {
        right.skip(BY_HAND);
        rule(doc, RIGHT.x, right.at(), RIGHT.x + RIGHT.width, right.at(), 'rule');
      }
      right.skip(2);
    }
  }
  const rightEnds = pages.names.length === sheet ? right.at() : aboveStrip();
  left.rows(WEAR, ['From the middle, right is plus', 'Bed, as found', 'Ram, as found', 'Bed, after', 'Ram, after'], places.map((along) => {
    const [a, b] = [record?.asFound.wear.find((p) => p.along === along), record?.overhauled?.wear.find((p) => p.along === along)];
    return [roundFigure(along, 'mm'), mm(a?.bed), mm(a?.ram), after(b?.bed), after(b?.ram)];
  }), least);
  if (pages.names.length !== sheet) return [];
  return [
    { x: INNER.x, y: left.at() + 4, width: LEFT, height: FRAME.y + FRAME.height - INSET - left.at() - 4 },
    { ...RIGHT, y: rightEnds + 4, height: aboveStrip() - rightEnds - 4 },
  ].filter(({ height }) => height > 14);
};

const minus = (words: string): string => words.replace(/-(?=\d)/g, '−');
/** Thousandths of a mm with a proper minus. */
const figureOf = (value: number): string => minus(value.toFixed(3));

const pm = (value: number | null | undefined): string => (value === null || value === undefined ? NOT_KNOWN : `plus or minus ${value.toFixed(3)} mm`);

/** The promises in words: what setting corrects, what placing avoids, what stays. */
const resultBlocks = (f: ConditionFigures, record: ConditionRecord): Block[] => {
  const note = (words: string): { words: string; style: { size: number } } => ({ words, style: { size: 2.4 } });
  const { corrected, elsewhere, inTheMiddle } = f;
  const setting = settingInWords(f);
  return [
    {
      heading: `What follows, ${f.asOf}`,
      paragraphs: [
        note(corrected ? `Over all of the bed that was measured the depth along a bend differs by ${pm(corrected.asIs)}${setting === null ? `; ${nothingSet(f)}. All of it bounds the promise` : `. ${setting[0]!.toUpperCase()}${setting.slice(1)}, found to work, ${f.works.tilt && f.works.crowning ? 'leave' : 'leaves'} ${pm(corrected.left)}. What is corrected bounds no promise`}.` : 'The wear of bed and ram seats is not known: no tolerance that hangs on a bend angle is promised.'),
        note(`Work of ${f.length} mm meets ${pm(inTheMiddle?.left)} in the middle of the bed${elsewhere ? `, and ${pm(elsewhere.fit.left)} where it meets least wear (${minus(placeInWords(f)!)}). What is left where the stations stand bounds the promise.` : '; where it would meet least is not known.'}`),
        note(`The ram comes back within ${pm(f.scatter)}. This stays wherever the work stands and bounds the promise.`),
        ...(f.driftPerSecond === null ? [] : [note(`At rest the ram sinks ${f.driftPerSecond.toFixed(3)} mm in a second.`)]),
        note('Fitted so that the largest distance left is least (minimax); seats taken as straight between readings, crowning as a parabola between the side frames that only lifts.'),
      ],
    },
    { heading: 'Not known, so not promised', paragraphs: f.notMeasured.map(({ what, so }) => ({ words: `${what}: ${so}.`, sign: '?', style: { size: 2.4 } })) },
    { heading: 'Overhaul', paragraphs: record.overhaul === '' ? [] : [note(record.overhaul)] },
    { heading: 'Remarks', paragraphs: [record.asFound, ...(record.overhauled ? [record.overhauled] : [])].filter(({ remarks }) => remarks !== '').map(({ date, remarks }) => note(`${date}: ${remarks}`)) },
  ].filter(({ paragraphs }) => paragraphs.length > 0);
};

const CAUTION_WORDS = [
  'Readings under a moving ram are for trained people only, with the machine blocked or guarded as its manual and the local rules say; hands stay clear of the pinch.',
  'Cracks, weld repairs, guarding and stopping time are for a competent person to judge. A machine with a crack stands still until then.',
  'Measuring force: never beyond the rating on the plate, on a block that bears it, with nobody in line with it.',
  'What is left open is not known: it is never taken as none and never as new.',
  `This sheet records what was measured on a day. It is no acceptance test: such tests are described in ${ACCURACY_STANDARDS}; no tolerance of theirs is used here.`,
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
  const room = drawWear(pages, machine, filled?.record ?? null);
  const more = (): ReturnType<typeof columnsFrom> => {
    pages.begin(filled ? 'cautions, what follows' : 'cautions');
    return columnsFrom(INNER.y, 2);
  };
  const cautions: Block = { heading: 'Cautions', paragraphs: CAUTION_WORDS.map((words) => ({ words, sign: '⚠', style: { size: 2.4 } })) };
  flow(doc, [cautions, ...(filled ? resultBlocks(filled.figures, filled.record) : [])], room.length > 0 ? room : more(), more);
  pages.names.forEach((name, k) => {
    doc.switchToPage(k);
    drawRows(doc, [
      [{ share: 2.6, label: 'Machine', value: machine.name, bold: true }, { share: 1, label: 'Revision', value: revision, bold: true }, { share: 2.2, label: 'What', value: `check sheet: ${name}`, bold: true }],
      [
        { share: 2, label: 'Measured by', value: who }, { share: 1.2, label: 'Measured on', value: date }, { share: 1.8, label: 'Promises rest on', value: filled?.figures.asOf ?? '' },
        { share: 1.2, label: 'Sheet', value: `sheet ${k + 1} of ${pages.names.length}` },
      ],
    ], stripArea());
  });
  return bytesOf(doc);
};
