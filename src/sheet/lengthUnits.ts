import type { Part } from './part.js';

type Unit = Part['unit'];

/** mm in a unit. */
export const MM_IN: Readonly<Record<Unit, number>> = { mm: 1, inch: 25.4, cm: 10, m: 1000 };

export const UNIT_WORDS: Readonly<Record<Unit, string>> = { mm: 'millimetres', inch: 'inches', cm: 'centimetres', m: 'metres' };
