import type { ToolChoice } from '../../forming/index.js';
import { figure } from '../wording.js';
import type { BendQuestion } from './useBend.js';

const SHOWN = 8;

interface BendPairsProps {
  readonly ranked: readonly ToolChoice[];
  /** Ids of the tools that are marked demo. */
  readonly invented: ReadonlySet<string>;
  readonly take: (pair: BendQuestion['pair']) => void;
}

/** The rack's pairs, best first, and the way to have another worked out. */
export const BendPairs = ({ ranked, invented, take }: BendPairsProps) => (
  <section className="section" aria-labelledby="pairs-title">
    <h2 id="pairs-title">Tools of the rack, best first</h2>
    <div className="scroll" tabIndex={0} role="group" aria-label="Tools ranked">
      <table>
        <thead><tr><th scope="col">Punch and die</th><th scope="col" className="number">V / t</th><th scope="col" className="number">Radius mm</th><th scope="col" className="number">Peak N/mm</th><th scope="col">Suits</th><th scope="col"><span className="hidden">Take it</span></th></tr></thead>
        <tbody>
          {ranked.slice(0, SHOWN).map(({ punch, die, vOverThickness, bend, suits, against }) => (
            <tr key={`${punch} ${die}`}>
              <td>{punch}, {die}{(invented.has(punch) || invented.has(die)) && <> <span className="tag">demo</span></>}</td><td className="number">{figure(vOverThickness, 1)}</td>
              <td className="number">{bend ? figure(bend.insideRadius, 2) : '–'}</td><td className="number">{bend ? figure(bend.peakForcePerLength, 0) : '–'}</td>
              <td>{suits ? '✓ yes' : `✕ ${against.join(' ')}`}</td>
              <td><button type="button" onClick={() => take({ punchId: punch, dieId: die })} aria-label={`Work out ${punch} in ${die}`}>Work out</button></td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  </section>
);
