import { airBend } from '../forming/index.js';

type Asked = Parameters<typeof airBend>[0];
type Answer = ReturnType<typeof airBend>;

/** Most answers kept for one metal; then they begin anew. */
const MOST = 4000;

const kept = new WeakMap<Asked['metal'], Map<string, Answer>>();

/** `airBend`, its answers kept with the metal: the same thickness, die and tip come again with every part and machine. */
export const airBendKept = (asked: Asked): Answer => {
  const { metal, ...figures } = asked;
  let answers = kept.get(metal);
  if (!answers || answers.size >= MOST) kept.set(metal, (answers = new Map()));
  const key = JSON.stringify(figures);
  let answer = answers.get(key);
  if (!answer) answers.set(key, (answer = airBend(asked)));
  return answer;
};
