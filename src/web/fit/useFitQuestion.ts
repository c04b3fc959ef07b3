import { useState } from 'react';
import type { FitSummary } from '../../server/index.js';
import type { Machine } from '../../shop/index.js';
import type { PartRevision } from '../../store/index.js';
import { post } from '../ask.js';
import { NONE_TOLD, type Told } from './BuyersField.js';

/** What may be typed or chosen of the question besides parts and machines. */
export interface Terms {
  readonly metalId: string;
  /** Undefined while none stands in the field that can be. */
  readonly quantity: number | undefined;
  /** Of ISO 2768-1, or 'none'. */
  readonly toleranceClass: string;
}

export interface FitQuestion {
  readonly parts: ReadonlySet<string>;
  readonly machines: ReadonlySet<string>;
  /** Those of the floor that are tried as ours: the buyer's own is a column of its own. */
  readonly ours: readonly string[];
  /** Machines that are tried, ours and the buyer's. */
  readonly tried: number;
  readonly terms: Terms;
  /** The buyer's machine or tools are chosen and not read yet, or cannot be. */
  readonly awaited: boolean;
  readonly choose: (change: { readonly parts?: ReadonlySet<string>; readonly machines?: ReadonlySet<string>; readonly terms?: Partial<Terms> }) => void;
  readonly tellMachines: (told: Told) => void;
  readonly tellRack: (told: Told) => void;
  /** Asks the server; throws its refusal. */
  readonly ask: () => Promise<FitSummary>;
}

const START: Terms = { metalId: 'dc01', quantity: 50, toleranceClass: 'c' };

/** Somebody's own parts are what is asked about; the demonstration's where there are none. */
const atFirst = (parts: readonly PartRevision[]): readonly PartRevision[] => {
  const own = parts.filter(({ demo }) => !demo);
  return own.length > 0 ? own : parts;
};

/** Which parts on which machines, with what the buyer has: the question as it is put together, and the way to ask it. */
export const useFitQuestion = (allParts: readonly PartRevision[], allMachines: readonly Machine[]): FitQuestion => {
  const [partIds, setParts] = useState<ReadonlySet<string>>();
  const [machineIds, setMachines] = useState<ReadonlySet<string>>();
  const [terms, setTerms] = useState(START);
  const [theirMachines, tellMachines] = useState(NONE_TOLD);
  const [theirRack, tellRack] = useState(NONE_TOLD);
  const parts = partIds ?? new Set(atFirst(allParts).map(({ id }) => id));
  const machines = machineIds ?? new Set(allMachines.map(({ id }) => id));
  const ours = [...machines].filter((id) => theirMachines.state !== 'told' || id !== theirMachines.id);
  return {
    parts, machines, ours, terms, tellMachines, tellRack,
    tried: ours.length + (theirMachines.state === 'told' && Array.isArray(theirMachines.data) ? theirMachines.data.length : 0),
    awaited: theirMachines.state === 'awaited' || theirRack.state === 'awaited',
    choose: (change) => {
      if (change.parts) setParts(change.parts);
      if (change.machines) setMachines(change.machines);
      if (change.terms) setTerms({ ...terms, ...change.terms });
    },
    ask: () => {
      const buyer = { ...(theirMachines.state === 'told' && { machines: theirMachines.data }), ...(theirRack.state === 'told' && { rack: theirRack.data }) };
      const { toleranceClass, ...rest } = terms;
      return post<FitSummary>('/api/fits', {
        partIds: [...parts], machineIds: ours, ...rest, toleranceClass: toleranceClass === 'none' ? null : toleranceClass,
        ...(Object.keys(buyer).length > 0 && { buyer }),
      });
    },
  };
};
