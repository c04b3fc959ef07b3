import { useEffect, type ReactNode } from 'react';
import { to } from '../place.js';
import { CAVEAT } from '../../forming/index.js';

/** A field of the title block and what stands in it. */
export type Field = readonly [name: string, value: ReactNode];

interface SheetProps {
  readonly title: string;
  readonly under?: ReactNode;
  /** The sheets above this one. */
  readonly trail: readonly (readonly [name: string, address: string])[];
  /** The title block in the lower right corner. */
  readonly block: readonly Field[];
  /** Cautions and the like, to the left of the title block. */
  readonly notes?: ReactNode;
  /** Little air at the top: for what is to fill the screen. */
  readonly close?: boolean;
  readonly children: ReactNode;
}

/** One drawing sheet: a border, what is drawn, and the title block in the lower right corner. */
export const Sheet = ({ title, under, trail, block, notes, close = false, children }: SheetProps) => {
  useEffect(() => {
    document.title = `${title} · Brakewright`;
  }, [title]);
  return (
    <div className="desk">
      <nav className="trail" aria-label="Sheets">
        <a href={to.parts} className="mark">Brakewright</a>
        {trail.map(([name, address]) => <a key={address} href={address}>{name}</a>)}
      </nav>
      <main className="paper">
        <div className={close ? 'frame close' : 'frame'}>
          <header className="head">
            <h1 tabIndex={-1}>{title}</h1>
            {under !== undefined && <div className="under">{under}</div>}
          </header>
          {children}
          <footer className="foot">
            <div className="notes">{notes}</div>
            <dl className="block" aria-label="Title block">
              {block.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}
              <div className="wide"><dt>Note</dt><dd>{CAVEAT}</dd></div>
            </dl>
          </footer>
        </div>
      </main>
    </div>
  );
};
