import { innerPlace, spoken } from '../../shop/index.js';

/** A place in the data as it is spoken: 'gauge.finger.faces.0' is 'gauge, finger, faces, number 1'. */
const placeInWords = (field: string): string => field.split('.').reduce((before, key) => innerPlace(before, /^\d+$/.test(key) ? Number(key) : key), '');

/** The name of a field as its label says it, without the unit and what explains it. */
const nameOf = (label: string): string => label.split(',')[0]!.replace(/ \(.*\)$/, '');

/** A parser's sentence about a field in the words of the form: under its label where it has one. */
export const faultWords = (field: string, sentence: string, label?: string): string => {
  const rest = sentence.startsWith(`${field} `) ? sentence.slice(field.length) : ` ${sentence}`;
  return `${label === undefined ? placeInWords(field) : nameOf(label)}${rest.replaceAll(/\b[a-z]+(?:[A-Z][a-z]+)+\b/g, spoken)}`.trim();
};
