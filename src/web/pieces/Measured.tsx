import { type MadePiece, withinTolerance } from '../../fit/index.js';
import { amount, signed } from './Differences.js';

/** What was measured on one piece, each figure against its prediction and tolerance; under it the tools that it was bent with. */
export const Measured = ({ piece }: { readonly piece: MadePiece }) => (
  <>
    <ul className="dots measured">
      {piece.figures.map((f) => {
        const { id, what, unit, measured, predicted, drawn, tolerance } = f;
        const out = withinTolerance(f) === false;
        return (
          <li key={id}>
            {what}: <strong>{amount(measured, unit)}</strong>, predicted {amount(predicted, unit)}{tolerance === null ? ', no tolerance asked' : `${drawn === undefined ? '' : `, drawn ${amount(drawn, unit)}`} ± ${amount(tolerance, unit)}`}: <span className={out ? 'verdict beware' : undefined}>{signed(measured - predicted, unit)}{tolerance !== null && (out ? ' ⚠ out of tolerance' : ', within')}</span>
          </li>
        );
      })}
    </ul>
    <p className="small">{piece.tools}</p>
  </>
);
