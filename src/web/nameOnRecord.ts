const KEPT = 'brakewright.by';

/** The name that goes on the record with what is done here; empty for none. */
export const nameOnRecord = (): string => localStorage.getItem(KEPT) ?? '';
export const setNameOnRecord = (name: string): void => localStorage.setItem(KEPT, name.trim());

/** The same as a query, for papers that a link opens: no header goes with it. */
export const whoQuery = (): string => (nameOnRecord() === '' ? '' : new URLSearchParams({ who: nameOnRecord() }).toString());

/**
 * Headers that carry a name to the server, in any letters: header values are latin, so it goes percent-encoded as in an address (docs/api.md).
 *
 * @example namedHeaders('Łukasz') // { 'x-by': '%C5%81ukasz' }
 */
export const namedHeaders = (name: string): Readonly<Record<string, string>> => {
  // half of a letter, which a field of limited length may leave, cannot be encoded
  const whole = name.replace(/\p{Cs}/gu, '').trim();
  return whole === '' ? {} : { 'x-by': encodeURIComponent(whole) };
};
