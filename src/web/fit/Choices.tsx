interface Choice {
  readonly id: string;
  readonly name: string;
  readonly more: string;
}

interface ChoicesProps {
  readonly legend: string;
  readonly all: readonly Choice[];
  readonly chosen: ReadonlySet<string>;
  readonly choose: (ids: ReadonlySet<string>) => void;
}

/** Several of a list, ticked one by one, all or none. */
export const Choices = ({ legend, all, chosen, choose }: ChoicesProps) => (
  <fieldset className="choices">
    <legend>{legend}: {chosen.size} of {all.length}</legend>
    <div className="buttons">
      <button type="button" onClick={() => choose(new Set(all.map(({ id }) => id)))}>All</button>
      <button type="button" onClick={() => choose(new Set())}>None</button>
    </div>
    <ul>
      {all.map(({ id, name, more }) => (
        <li key={id}>
          <label><input type="checkbox" checked={chosen.has(id)} onChange={(event) => {
            const next = new Set(chosen);
            if (event.target.checked) next.add(id);
            else next.delete(id);
            choose(next);
          }} /> <span>{name} <span className="soft small">{more}</span></span></label>
        </li>
      ))}
    </ul>
  </fieldset>
);
