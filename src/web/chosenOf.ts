/**
 * The id of what a list has chosen: the first of `wanted` that is in the list, the list's first where none is, undefined of an empty list. What a
 * select shows and what is sent are then the same.
 *
 * @example chosenOf([{ id: 'a' }, { id: 'b' }], undefined, 'gone', 'b') // 'b'
 */
export const chosenOf = (all: readonly { readonly id: string }[], ...wanted: readonly (string | undefined)[]): string | undefined =>
  wanted.find((id) => all.some((one) => one.id === id)) ?? all[0]?.id;
