/** A mixed-integer model as it is written in the LP text format: rows, bounds and names, no numbers lost but the seventh decimal. */
export class Model {
  readonly #objective: string[] = [];
  readonly #rows: string[] = [];
  readonly #binaries = new Set<string>();

  cost(factor: number, variable: string): void {
    if (factor !== 0) this.#objective.push(`${written(factor)} ${variable}`);
  }

  /** Sum of the terms, held against `bound`. A row without terms says nothing and is left out. */
  row(terms: readonly (readonly [number, string])[], sense: '<=' | '>=' | '=', bound: number): void {
    if (terms.length > 0) this.#rows.push(`${terms.map(([f, v]) => `${written(f)} ${v}`).join(' ')} ${sense} ${bound.toFixed(7)}`);
  }

  binary(name: string): string {
    this.#binaries.add(name);
    return name;
  }

  /** Lines are kept short: readers of the format stop at some length. */
  text(): string {
    const wrapped = (parts: readonly string[]): string => parts.join('\n ');
    const rows = this.#rows.map((r, i) => ` r${i}: ${r.replace(/ ([+-])/g, '\n  $1')}`);
    return `Minimize\n obj: ${wrapped(this.#objective)}\nSubject To\n${rows.join('\n')}\nBinary\n ${wrapped([...this.#binaries])}\nEnd\n`;
  }
}

const written = (factor: number): string => `${factor < 0 ? '-' : '+'} ${Math.abs(factor).toFixed(7)}`;
