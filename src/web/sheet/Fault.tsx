import { SILENT } from '../ask.js';

/** Something to beware of: always the colour with its sign and word. */
export const Warning = ({ word, children }: { readonly word: string; readonly children: React.ReactNode }) => (
  <p className="warning"><strong><span aria-hidden="true">⚠</span> {word}</strong> {children}</p>
);

/** What went wrong, in the server's own sentence; one that does not answer has refused nothing. */
export const Fault = ({ sentence }: { readonly sentence: string | undefined }) =>
  sentence === undefined ? null : <div role="alert"><Warning word={sentence === SILENT ? 'No answer.' : 'Refused.'}>{sentence}</Warning></div>;

/** While something is on its way. */
export const Waiting = ({ what }: { readonly what: string }) => <p className="waiting" role="status">{what} …</p>;
