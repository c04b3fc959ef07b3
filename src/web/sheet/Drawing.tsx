import { useEffect, useId, useRef, useState } from 'react';
import { getText, sentence } from '../ask.js';
import { Fault, Waiting } from './Fault.js';

interface DrawingProps {
  /** Where the server has the drawing. */
  readonly path: string;
  readonly className?: string;
}

/**
 * A drawing of the server's, in the page itself so that it has the page's lettering and prints sharp. It is parsed
 * as XML and its title's id made its own.
 */
export const Drawing = ({ path, className = '' }: DrawingProps) => {
  const [drawn, setDrawn] = useState<{ readonly path: string; readonly svg?: Element; readonly fault?: string }>();
  const place = useRef<HTMLDivElement>(null);
  const id = useId();
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    const stop = new AbortController();
    getText(path, stop.signal).then(
      (text) => setDrawn({ path, svg: parsed(text, id) }),
      (fault: unknown) => !stop.signal.aborted && setDrawn({ path, fault: sentence(fault) }),
    );
    return () => stop.abort();
  }, [path, id, turn]);
  const svg = drawn?.svg;
  useEffect(() => {
    if (svg) place.current?.replaceChildren(svg);
  }, [svg]);
  return (
    <div className={`drawing ${className}`}>
      <div ref={place} />
      {drawn?.path !== path && <Waiting what="Drawing" />}
      {drawn?.path === path && <Fault sentence={drawn.fault} again={() => { setDrawn(undefined); setTurn(turn + 1); }} />}
    </div>
  );
};

/** A drawing that came as text with something else. */
export const SvgText = ({ text, className = '' }: { readonly text: string; readonly className?: string }) => {
  const place = useRef<HTMLDivElement>(null);
  const id = useId();
  useEffect(() => place.current?.replaceChildren(parsed(text, id)), [text, id]);
  return <div ref={place} className={`drawing ${className}`} />;
};

const parsed = (text: string, id: string): Element => {
  const svg = document.importNode(new DOMParser().parseFromString(text, 'image/svg+xml').documentElement, true);
  svg.removeAttribute('width');
  svg.removeAttribute('height');
  const title = svg.querySelector('title');
  if (title) {
    title.id = `${id}-title`;
    svg.setAttribute('aria-labelledby', title.id);
  }
  return svg;
};
