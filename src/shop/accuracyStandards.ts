/**
 * Tests of a press brake's accuracy by number, for whoever must hold a machine to one. Numbers and titles were seen, their tolerances were not:
 * none is used. ISO 230 from memory.
 */
export const ACCURACY_STANDARDS = 'ASME B5.55M-1994, GB/T 33644-2017 (from 1 May 2026 GB/T 33644-2025) and IS 14877 (Part 2):2002, those of axes in ISO 230-1 and ISO 230-2 (these two named from memory)';
