import { type DxfFile, parseString } from 'dxf';

/** Lines of text above which a file is refused: half a million entities, more than any blank has; a parsed line costs some 100 bytes. */
const MOST_LINES = 4_000_000;
/** Bytes, at eight to a line. */
const MOST_BYTES = 8 * MOST_LINES;

export type ParsedDxf =
  | { readonly ok: true; readonly file: DxfFile }
  | { readonly ok: false; readonly code: 'unreadable file' | 'too large'; readonly sentence: string; readonly measure?: number };

const unreadable = (sentence: string): ParsedDxf => ({ ok: false, code: 'unreadable file', sentence });

/** The file's entities as the parser gives them; or why there are none. It never throws, whatever the bytes are. */
export const parseDxf = (bytes: Uint8Array | string): ParsedDxf => {
  if (bytes.length > MOST_BYTES) {
    const sentence = `The file has ${(bytes.length / 2 ** 20).toFixed(0)} MiB; drawings of one blank are read up to ${(MOST_BYTES / 2 ** 20).toFixed(0)} MiB.`;
    return { ok: false, code: 'too large', sentence, measure: bytes.length };
  }
  const text = typeof bytes === 'string' ? bytes : new TextDecoder('utf-8').decode(bytes);
  if (text.startsWith('AutoCAD Binary DXF')) return unreadable('The file is a binary DXF; save it as text (ASCII) DXF.');
  let lines = 1;
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) lines += 1;
  if (lines > MOST_LINES) return { ok: false, code: 'too large', sentence: `The file has ${lines} lines of text; drawings of one blank are read up to ${MOST_LINES}.`, measure: lines };
  let file: DxfFile;
  try {
    file = parseString(text);
  } catch {
    return unreadable('The file is damaged: its groups do not follow the format of text DXF.');
  }
  return file.entities.length === 0 ? unreadable('The file holds no drawing in text DXF: no entity was found in it.') : { ok: true, file };
};
