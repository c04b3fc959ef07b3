import { PLANNED_ANEW, layoutInWords, stationsInWords } from '../../fit/index.js';
import { Drawing } from '../sheet/Drawing.js';
import { Warning } from '../sheet/Fault.js';
import { mm } from '../wording.js';
import type { Day } from './day.js';

/** The one layout that the parts of the day stand on, where it was asked for. */
export const DayLayout = ({ plan, query }: { readonly plan: Day; readonly query: string }) => plan.layout && (
  <section aria-labelledby="layout-title">
    <h2 id="layout-title">One layout</h2>
    <p>{layoutInWords(plan.layout, plan, (length) => mm(length, 0))}</p>
    <Warning word="Beware.">{PLANNED_ANEW} Bend by the set-up sheet of each part below.</Warning>
    <ul className="dots">{stationsInWords(plan.layout).map((words) => <li key={words}>{words}</li>)}</ul>
    <Drawing path={`/api/day-plan/layout.svg?${query}`} />
    <p className="small soft">{plan.layout.model}</p>
  </section>
);
