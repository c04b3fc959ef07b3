import type { Branch } from './views.js';

/** Keeps answers with the branch that they are about: `key` names all else that an answer depends on. */
export const keptWithBranch = <T>(): ((branch: Branch, key: string, make: () => T) => T) => {
  const kept = new WeakMap<Branch, Map<string, T>>();
  return (branch, key, make) => {
    let mine = kept.get(branch);
    if (!mine) kept.set(branch, (mine = new Map()));
    let answer = mine.get(key);
    if (answer === undefined) mine.set(key, (answer = make()));
    return answer;
  };
};
