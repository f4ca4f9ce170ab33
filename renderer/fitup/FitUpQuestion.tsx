import type { ReactNode } from 'react';
import { setupNames, type CarDocument } from '../../geometry/index';
import { Popover } from '../look/controls/Popover';
import type { FitUpAsked } from './fitUpQuestion';

interface FitUpQuestionProps {
  readonly document: CarDocument;
  readonly asked: FitUpAsked;
  /** the table has both sides anyhow, and a choice only hides rows */
  readonly onChange: (asked: FitUpAsked) => void;
  readonly axle: string;
  readonly children?: ReactNode;
}

/** Over what it is asked: everything that the wheels can do, of which sides, in which setups. */
export const FitUpQuestion = ({ document, asked, axle, onChange, children }: FitUpQuestionProps) => {
  const names = setupNames(document);
  const inUse = names.filter((name) => !asked.without.includes(name));
  const words = inUse.length === names.length ? 'all setups' : inUse.length === 1 ? inUse[0] : `${inUse.length} setups`;
  const flip = (name: string) =>
    onChange({
      ...asked,
      without: asked.without.includes(name) ? asked.without.filter((other) => other !== name) : [...asked.without, name],
    });
  return (
    <div className="fitupask">
      <label className="choice">
        <span className="unseen">Wheels</span>
        <select
          className="pick"
          aria-label="Wheels"
          value={asked.sides}
          onChange={(event) => onChange({ ...asked, sides: event.target.value as FitUpAsked['sides'] })}
        >
          <option value="both">both {axle} wheels</option>
          <option value="left">{axle} left</option>
          <option value="right">{axle} right</option>
        </select>
      </label>
      <span className="quiet" title="From the damper fully open to solid, and from lock to lock">
        fully open to solid × lock to lock, in
      </span>
      {names.length > 1 && (
        <Popover
          button={{
            className: 'pick',
            label: `Setups: ${words ?? ''}`,
            title: 'Setups that it is worked out over',
            content: (
              <>
                <span className="pickwords">{words}</span>
                <span className="opens" aria-hidden="true" />
              </>
            ),
          }}
          label="Setups that it is worked out over"
          role="group"
          className="fitupsetups"
        >
          {names.map((name) => (
            <label key={name} className="tick">
              <input
                type="checkbox"
                checked={inUse.includes(name)}
                disabled={inUse.length === 1 && inUse[0] === name}
                onChange={() => flip(name)}
              />
              {name}
            </label>
          ))}
        </Popover>
      )}
      {names.length < 2 && <b>{names[0] ?? 'the car as drawn'}</b>}
      <span className="spread" />
      {children}
    </div>
  );
};
