import type { DayPlan } from '../../fit/index.js';

/** What GET /api/day-plan answers (docs/api.md). */
export type Day = DayPlan & { readonly trialIds: readonly string[]; readonly partIds: readonly string[]; readonly leftIds: readonly string[] };
