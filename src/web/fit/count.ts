/** "1 part", "3 parts". */
export const count = (n: number, what: string): string => (n === 1 ? `1 ${what}` : `${n} ${what}s`);
