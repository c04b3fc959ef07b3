/** Characters of a name that are kept: more does not fit a title block, and a file may carry a book in it. */
const LONGEST = 80;

const character = (hex: string): string => {
  const code = parseInt(hex, 16);
  return code <= 0x10ffff ? String.fromCodePoint(code) : '';
};

/** Some write bytes of UTF-8 where the format wants its own escapes: told apart by being valid. `text` holds one byte a character. */
const fromBytes = (text: string): string => {
  if (!/[\x80-\xff]/.test(text) || /[^\x00-\xff]/.test(text)) return text;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Uint8Array.from(text, (c) => c.charCodeAt(0)));
  } catch {
    return text;
  }
};

/** The escapes of ISO 10303-21, 6.4.3: \X\hh of a byte, \X2\....\X0\ and \X4\........\X0\ of code points, \S\c of the upper half. */
const unescaped = (text: string): string =>
  text.replace(/\\X2\\((?:[0-9A-F]{4})+)\\X0\\|\\X4\\((?:[0-9A-F]{8})+)\\X0\\|\\X\\([0-9A-F]{2})|\\S\\(.)|\\P[A-I]\\|\\\\/gis, (all, two?: string, four?: string, byte?: string, upper?: string) => {
    if (two !== undefined) return String.fromCharCode(...two.match(/.{4}/g)!.map((hex) => parseInt(hex, 16)));
    if (four !== undefined) return four.match(/.{8}/g)!.map(character).join('');
    if (byte !== undefined) return character(byte);
    if (upper !== undefined) return String.fromCharCode((upper.charCodeAt(0) + 128) & 0xff);
    return all === '\\\\' ? '\\' : '';
  });

/** Words that programs write where nobody gave a name. */
const NO_NAME = /^(?:none|null|unnamed|untitled|no name|solid|compound|shell|shape|assembly|product|part|body)$|\bSTEP (?:translator|processor)\b/i;

/**
 * A name as it stands in a STEP file (without its quotes), for people: escapes undone, characters that steer a terminal or turn the
 * writing about left out, no longer than `LONGEST`. Undefined where it is no name.
 *
 * @example nameText('Tr\\X2\\00E4\\X0\\ger  2') // 'Träger 2'
 */
export const nameText = (raw: string): string | undefined => {
  // no name is read further than this, however long the file says that it is
  const plain = unescaped(fromBytes(raw.slice(0, 10 * LONGEST))).replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}\s]+/gu, ' ').trim();
  const name = [...plain].slice(0, LONGEST).join('').trim();
  return !/[\p{L}\p{N}]/u.test(name) || NO_NAME.test(name) ? undefined : name;
};
