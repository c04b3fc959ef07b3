/** The header that says whether a file is shown or kept, and under which name (RFC 6266, RFC 8187). Halves of surrogate pairs, which cannot be encoded, become a mark. */
export const disposition = (how: 'inline' | 'attachment', name: string): string => `${how}; filename*=UTF-8''${encodeURIComponent(name.replace(/\p{Cs}/gu, '\ufffd'))}`;
