import { Component, type ReactNode } from 'react';
import { sentence } from './ask.js';
import { to } from './place.js';
import { Warning } from './sheet/Fault.js';
import { Sheet } from './sheet/Sheet.js';

interface BoundaryProps {
  /** Address of the page inside. */
  readonly place: string;
  readonly children: ReactNode;
}

interface State {
  /** What was thrown, in words; null while nothing was. */
  readonly words: string | null;
}
const NO_FAULT: State = { words: null };

/** A page that throws while it is drawn: in its place stand what happened and the ways to go on. */
export class Boundary extends Component<BoundaryProps, State> {
  override state: State = NO_FAULT;

  static getDerivedStateFromError(fault: unknown): State {
    return { words: sentence(fault) };
  }

  override render(): ReactNode {
    const { words } = this.state;
    if (words === null) return this.props.children;
    return (
      <Sheet title="This sheet broke off" trail={[]} block={[['Address', this.props.place || '#/']]}>
        <div className="body">
          <div role="alert"><Warning word="A defect of the program.">It could not draw this sheet: {words}</Warning></div>
          <p>Nothing that was kept is lost: parts, trials, machines and tools are with the server as they were. What was typed into a machine, a tool or a condition record and not kept yet is held in this tab.</p>
          <div className="buttons">
            <button type="button" className="next" onClick={() => this.setState(NO_FAULT)}>Draw it again</button>
            <button type="button" onClick={() => location.reload()}>Load the pages anew</button>
            <a className="button" href={to.parts}>Go to the parts</a>
          </div>
          <p className="small soft">If it breaks off again, open its address in a new tab: that begins without what was typed here.</p>
        </div>
      </Sheet>
    );
  }
}
