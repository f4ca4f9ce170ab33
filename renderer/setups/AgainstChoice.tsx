import { useMemo, useRef, type ChangeEvent } from 'react';
import { useBench, useWindow } from '../shell/benchContext';
import { compareWithFile } from '../state/actions/compareWith';
import { chooseAgainst } from '../state/actions/editSetup';
import { comparedWith } from '../state/benchStore';
import { againstGroups } from './againstChoices';

const NOTHING = 'nothing';
const ANOTHER_FILE = 'another';

/** What the setup on the bench is compared with: another setup, the car as saved, or another file. */
export const AgainstChoice = () => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const saved = useBench((state) => state.file?.saved.document ?? null);
  const other = useBench(comparedWith);
  const groups = useMemo(() => (bench ? againstGroups(bench, saved) : []), [bench, saved]);
  const opener = useRef<HTMLInputElement>(null);
  if (!bench) return null;
  const choose = (value: string) => {
    if (value === ANOTHER_FILE) return opener.current?.click();
    const choice = groups.flatMap(({ choices }) => choices).find((one) => one.value === value);
    if (choice) chooseAgainst(store, choice.against, choice.againstCar);
  };
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    if (!file) return;
    const bytes = new Uint8Array(await file.arrayBuffer());
    compareWithFile(store, file.name, bytes);
    event.target.value = '';
  };
  return (
    <label className="choice compared">
      <span className="quiet wholewords">against</span>
      <span className="quiet shortwords">±</span>
      <select
        aria-label="Setup compared with"
        title={other?.name}
        value={other ? `${bench.againstCar.kind}:${other.setup}` : NOTHING}
        onChange={(event) => choose(event.target.value)}
      >
        {!other && <option value={NOTHING}>{groups.length === 0 ? 'nothing: the only setup' : 'nothing: the same setup'}</option>}
        {groups.map((group) => (
          <optgroup key={group.label} label={group.label}>
            {group.choices.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </optgroup>
        ))}
        <option value={ANOTHER_FILE}>another file…</option>
      </select>
      <input
        ref={opener}
        type="file"
        hidden
        accept=".json,application/json"
        aria-label="Car file to compare with"
        onChange={(event) => void take(event)}
      />
    </label>
  );
};
