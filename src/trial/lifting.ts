import { blankSize } from './developedSize.js';
import type { TrialInput } from './input.js';
import type { Tooling } from './tooling.js';
import type { Reason, Trial } from './trial.js';

/** What a step begins with where one person does not do. */
export const HELP = 'Two persons or a lifting aid';

type Lifting = NonNullable<Trial['lifting']>;

/** The blank's weight held against what the shop lets one person handle. */
export const liftingOf = ({ sheet }: Pick<Tooling, 'sheet'>, { metal, limits }: Pick<TrialInput, 'metal' | 'limits'>): Lifting => {
  const { kilograms } = blankSize(sheet, metal);
  const onePerson = limits?.onePerson ?? null;
  return { kilograms, onePerson, help: onePerson !== null && kilograms > onePerson };
};

/** A piece too heavy for one person where no help is at hand. */
export const tooHeavy = (tooling: Pick<Tooling, 'sheet'>, input: Pick<TrialInput, 'metal' | 'limits'>): Reason | null => {
  const { kilograms, onePerson, help } = liftingOf(tooling, input);
  if (!help || input.limits?.help !== 'none') return null;
  return {
    code: 'weight', bends: [], by: kilograms - onePerson!,
    sentence: `The blank weighs ${kilograms.toFixed(1)} kg, ${(kilograms - onePerson!).toFixed(1)} kg more than the ${onePerson!.toFixed(1)} kg that this shop lets one person handle, and no second person or lifting aid is at hand.`,
  };
};

export const helpWords = ({ kilograms, onePerson, help }: Lifting): readonly string[] =>
  help ? [`The blank weighs ${kilograms.toFixed(1)} kg, over the ${onePerson!.toFixed(1)} kg that this shop lets one person handle: ${HELP.toLowerCase()} at every step. Local codes and trained people decide what may be lifted.`] : [];
