import { useEffect, useState } from 'react';
import type { AirBendCurve, ClosedForm, DeductionAnswer, ReliefHole, StockRange, TestStripPlan, ToolChoice } from '../../forming/index.js';
import { post, sentence } from '../ask.js';
import { type FigureRange, figureWithin } from '../shop/figureWithin.js';

/** What POST /api/bend answers (docs/api.md). */
export interface BendAnswer {
  readonly ranked: readonly ToolChoice[];
  readonly words: readonly string[];
  readonly chosen: {
    readonly choice: ToolChoice; readonly punchName: string; readonly dieName: string; readonly dieAngle: number;
    readonly force: number | null; readonly byRule: readonly ClosedForm[];
    readonly range: Extract<StockRange, { ok: true }>['value'] | { readonly sentence: string } | null; readonly strip: TestStripPlan | null; readonly reliefHole: ReliefHole | null; readonly deduction: DeductionAnswer | null; readonly curve: AirBendCurve | null;
  } | null;
}

/** A bend as it is typed: mm and degrees in the letters of their fields. */
export interface BendQuestion {
  readonly metalId: string;
  readonly thickness: string;
  readonly length: string;
  readonly bendAngle: string;
  /** Empty where none is told. */
  readonly flange: string;
  /** Tools taken in place of the best pair. */
  readonly pair: { readonly punchId: string; readonly dieId: string } | null;
}

export interface Worked {
  readonly answer: BendAnswer;
  /** What it answers: figures that hang on the question go by this, not by what is typed since. */
  readonly of: BendQuestion;
}

type Typed = 'thickness' | 'length' | 'bendAngle' | 'flange';

/** As the server takes them (docs/api.md). */
export const BEND_RANGES: Readonly<Record<Typed, FigureRange>> = {
  thickness: { what: 'thickness', least: 0, most: 50, unit: 'mm', above: true },
  length: { what: 'length', least: 0, most: 12_000, unit: 'mm', above: true },
  bendAngle: { what: 'bend angle', least: 1, most: 180, unit: 'degrees' },
  flange: { what: 'shortest flange', least: 0, most: 12_000, unit: 'mm', above: true, mayStayOut: true },
};

/** The figures of a question, without those left empty; undefined where one cannot be. */
const figuresOf = (question: BendQuestion): Readonly<Partial<Record<Typed, number>>> | undefined => {
  const read = (Object.keys(BEND_RANGES) as Typed[]).map((name) => ({ name, figure: figureWithin(question[name], BEND_RANGES[name]) }));
  if (read.some(({ figure }) => !figure.ok)) return undefined;
  return Object.fromEntries(read.flatMap(({ name, figure }) => (figure.ok && figure.value !== undefined ? [[name, figure.value]] : [])));
};

/** ms after the last key before the server is asked. */
const PAUSE = 350;

/** One bend as the server works it out. `worked` is the last answer, also while another is on its way or was refused: `stale` says so. `unread`: a figure cannot be, and nothing is asked. */
export const useBend = (question: BendQuestion): { readonly worked: Worked | undefined; readonly stale: boolean; readonly unread: boolean; readonly fault: string | undefined; readonly again: () => void } => {
  const [worked, setWorked] = useState<Worked>();
  const [refused, setRefused] = useState<{ readonly fault: string; readonly of: BendQuestion }>();
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let current = true;
    const figures = figuresOf(question);
    if (figures === undefined) return undefined;
    const { metalId, pair } = question;
    const waiting = setTimeout(() => {
      post<BendAnswer>('/api/bend', { metalId, ...figures, ...pair }).then(
        (answer) => {
          if (!current) return;
          setWorked({ answer, of: question });
          setRefused(undefined);
        },
        (refusal: unknown) => { if (current) setRefused({ fault: sentence(refusal), of: question }); },
      );
    }, PAUSE);
    return () => { current = false; clearTimeout(waiting); };
  }, [question, turn]);
  return {
    worked, stale: worked?.of !== question, unread: figuresOf(question) === undefined, fault: refused?.of === question ? refused.fault : undefined,
    again: () => setTurn((n) => n + 1),
  };
};
