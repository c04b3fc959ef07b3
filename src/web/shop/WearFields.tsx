import { FieldFault, NumberField, useForm } from './fields.js';
import { at } from './tree.js';

/** mm between the places that a new map starts with. */
const SPACING = 250;

/** The wear map as a table: place, bed seat, ram seat. */
export const WearFields = ({ path, length }: { readonly path: string; readonly length: number }) => {
  const { data, set } = useForm();
  const held = at(data, path);
  const list: readonly unknown[] = Array.isArray(held) ? held : [];
  const begin = (): void => {
    const n = Math.max(1, Math.round(length / 2 / SPACING));
    const spacing = Math.floor(length / 2 / n / 10) * 10;
    set(path, Array.from({ length: 2 * n + 1 }, (_, i) => ({ along: (i - n) * spacing, bed: null, ram: null })));
  };
  return (
    <div className="wear-fields">
      <p className="small soft">Heights of both seats over one level line, up is plus, mm; the ram at pressing height. A place without a reading is not known.</p>
      {list.length > 0 && (
        <div className="scroll" tabIndex={0} role="group" aria-label="Wear map"><table>
          <thead><tr><th scope="col">From the bed's middle, mm (right is plus)</th><th scope="col">Bed seat, mm</th><th scope="col">Ram seat, mm</th><th scope="col"><span className="hidden">Remove</span></th></tr></thead>
          <tbody>{list.map((_, i) => (
            <tr key={i}><td><NumberField path={`${path}.${i}.along`} label={`Place ${i + 1}`} /></td><td><NumberField path={`${path}.${i}.bed`} label="Bed" orNothing /></td><td><NumberField path={`${path}.${i}.ram`} label="Ram" orNothing /></td>
              <td><button type="button" onClick={() => set(path, list.filter((__, k) => k !== i))} aria-label={`Remove place ${i + 1}`}>Remove</button></td></tr>
          ))}</tbody>
        </table></div>
      )}
      <FieldFault path={path} />
      <div className="buttons">
        {list.length === 0 && <button type="button" onClick={begin}>Begin a wear map, a place every {SPACING} mm</button>}
        {list.length > 0 && <button type="button" onClick={() => set(path, [...list, { along: Number(at(data, `${path}.${list.length - 1}.along`)) + SPACING, bed: null, ram: null }])}>Add a place</button>}
      </div>
    </div>
  );
};
