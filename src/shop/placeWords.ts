/** A field's name as it is spoken: 'openHeight' is 'open height'. */
export const spoken = (name: string): string => name.replaceAll(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/**
 * A place in plain data in words, one key further in than `before` ('' at the top): a number counts from 1.
 * @example innerPlace('gauge, faces', 0) // 'gauge, faces, number 1'
 */
export const innerPlace = (before: string, key: string | number): string => {
  const here = typeof key === 'number' ? `number ${key + 1}` : spoken(key);
  return before === '' ? here : `${before}, ${here}`;
};
