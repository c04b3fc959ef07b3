import { SILENT } from '../ask.js';

/** Something to beware of: always the colour with its sign and word. */
export const Warning = ({ word, children }: { readonly word: string; readonly children: React.ReactNode }) => (
  <p className="warning"><strong><span aria-hidden="true">⚠</span> {word}</strong> {children}</p>
);

/** What went wrong, in the server's own sentence; one that does not answer has refused nothing, and where something was to be fetched it can be asked again. */
export const Fault = ({ sentence, again }: { readonly sentence: string | undefined; readonly again?: () => void }) =>
  sentence === undefined ? null : (
    <div role="alert" className="stack">
      <Warning word={sentence === SILENT ? 'No answer.' : 'Refused.'}>{sentence}</Warning>
      {again && sentence === SILENT && <div className="buttons no-print"><button type="button" onClick={again}>Try again</button></div>}
    </div>
  );

/** While something is on its way. */
export const Waiting = ({ what }: { readonly what: string }) => <p className="waiting" role="status">{what} …</p>;
