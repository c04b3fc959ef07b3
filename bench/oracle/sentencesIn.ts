/** How many sentences a text holds: a full stop within a figure ends none. */
export const sentencesIn = (text: string): number => text.trim().split(/[.!?](?:\s+|$)/).filter((s) => s !== '').length;
