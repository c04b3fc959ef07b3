/** Sentences that go with a machine's name wherever it is named, each with its sign. */
export const Beware = ({ of }: { readonly of: readonly string[] | undefined }) =>
  of?.map((words) => <span key={words} className="beware-of small"><span aria-hidden="true">⚠</span> {words}</span>);
