import { innerPlace, spoken } from '../../shop/index.js';
import { inUnit } from './figureTyped.js';

/** A place in the data as it is spoken: 'gauge.finger.faces.0' is 'gauge, finger, faces, number 1'. */
const placeInWords = (field: string): string => field.split('.').reduce((before, key) => innerPlace(before, /^\d+$/.test(key) ? Number(key) : key), '');

/** The name of a field as its label says it, without the unit and what explains it. */
const nameOf = (label: string): string => label.split(',')[0]!.replace(/ \(.*\)$/, '');

/** The unit that a label ends with. */
const unitOf = (label: string): string => /, (\S+)$/.exec(label)?.[1] ?? '';

/** Figures of the data's unit in that of the label: the limits, and what was given. */
const inItsUnit = (sentence: string, label: string, per: number): string =>
  sentence.replaceAll(/\d+(?:\.\d+)?(?= (?:to|N\b)| was given)/g, (figure) => String(inUnit(Number(figure), 1 / per))).replace(/ N\b/, ` ${unitOf(label)}`);

/** A parser's sentence about a field in the words of the form: under its label where it has one, in the label's unit, of which one is `per` newtons. */
export const faultWords = (field: string, sentence: string, label?: string, per = 1): string => {
  const said = label !== undefined && per !== 1 ? inItsUnit(sentence, label, per) : sentence;
  const rest = said.startsWith(`${field} `) ? said.slice(field.length) : ` ${said}`;
  return `${label === undefined ? placeInWords(field) : nameOf(label)}${rest.replaceAll(/\b[a-z]+(?:[A-Z][a-z]+)+\b/g, spoken)}`.trim();
};
