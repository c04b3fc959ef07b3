/** Gauss elimination with row exchange on `size` rows of `size` + 1. */
export const eliminate = (rows: number[][], size: number): number[] => {
  for (let i = 0; i < size; i++) {
    let pivot = i;
    for (let r = i + 1; r < size; r++) if (Math.abs(rows[r]![i]!) > Math.abs(rows[pivot]![i]!)) pivot = r;
    [rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!];
    for (let r = i + 1; r < size; r++) {
      const f = rows[r]![i]! / rows[i]![i]!;
      for (let c = i; c <= size; c++) rows[r]![c]! -= f * rows[i]![c]!;
    }
  }
  const x: number[] = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    let sum = rows[i]![size]!;
    for (let c = i + 1; c < size; c++) sum -= rows[i]![c]! * x[c]!;
    x[i] = sum / rows[i]![i]!;
  }
  return x;
};
