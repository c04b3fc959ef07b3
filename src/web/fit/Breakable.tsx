import { Fragment } from 'react';

/** A name that may be broken behind its underscores and hyphens, as file names have them. */
export const Breakable = ({ name }: { readonly name: string }) => (
  <>{name.split(/(?<=[_-])/).map((piece, i) => <Fragment key={i}>{i > 0 && <wbr />}{piece}</Fragment>)}</>
);
