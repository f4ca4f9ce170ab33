import { useRef, type RefObject } from 'react';
import { nameOfKey } from '../../adjusters/fitterWords';
import { FieldFaults } from '../../look/controls/fieldFaults';
import type { TellFault } from '../../look/controls/fieldFaults';
import { NumberField } from '../../look/controls/NumberField';
import type { KeepOutAsked } from '../fitUpQuestion';
import { faultyWords } from '../faultyFields';

export const KEEP_OUT_BEGIN: KeepOutAsked = { of: 'all-moving', grow: 0, bound: 2 };
/** As far as the command line goes [mm]. */
const MOST = 1000;
const LEAST_BOUND = 0.1;

interface KeepOutFormProps {
  readonly form: KeepOutAsked;
  readonly onForm: (form: KeepOutAsked) => void;
  /** what can be kept out of: parts of the file, then what is made of the axle's own numbers */
  readonly names: readonly string[];
  readonly isRunning: boolean;
  /** the fields that refuse what stands in them, and who is told of them */
  readonly faulty: readonly string[];
  readonly tellFault: TellFault;
  readonly onRun: () => void;
}

/** The first field of a form that refuses what stands in it has the keys. @returns whether there is one */
const goToFault = (form: RefObject<HTMLElement | null>): boolean => {
  const first = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
  first?.focus();
  return first !== null && first !== undefined;
};

/** What is to be kept out of, grown by how much and how finely; it takes seconds, and begins when it is asked for. */
export const KeepOutForm = ({ form, onForm, names, isRunning, faulty, tellFault, onRun }: KeepOutFormProps) => {
  const own = useRef<HTMLDivElement>(null);
  const isAll = form.of === 'all-moving';
  const chosen = form.of === 'all-moving' ? [] : form.of;
  const isNothing = !isAll && chosen.length === 0;
  const flip = (name: string) =>
    onForm({ ...form, of: chosen.includes(name) ? chosen.filter((other) => other !== name) : [...chosen, name] });
  const field = (key: 'grow' | 'bound', label: string, least: number) => (
    <span className="casefield">
      <span aria-hidden="true">{label}</span>
      <NumberField
        label={`${label}, mm`}
        value={form[key]}
        unit="mm"
        measures="length"
        min={least}
        max={MOST}
        decimals={1}
        onSet={(value) => onForm({ ...form, [key]: value })}
        onStep={(steps) => onForm({ ...form, [key]: Math.max(least, Math.round((form[key] + steps) * 100) / 100) })}
        onHome={() => onForm({ ...form, [key]: KEEP_OUT_BEGIN[key] })}
      />
    </span>
  );
  return (
    <div ref={own} className="keepoutask">
      <fieldset className="keepoutform">
        <legend>Space swept by</legend>
        <label className="tick">
          <input
            type="checkbox"
            checked={isAll}
            onChange={(event) => onForm({ ...form, of: event.target.checked ? 'all-moving' : [] })}
          />
          everything that moves
        </label>
        {!isAll &&
          names.map((name) => (
            <label key={name} className="tick">
              <input type="checkbox" checked={chosen.includes(name)} onChange={() => flip(name)} />
              {nameOfKey(name)}
            </label>
          ))}
      </fieldset>
      <p className="caserow keepoutrow">
        <FieldFaults value={tellFault}>
          {field('grow', 'Grown by', 0)}
          {field('bound', 'Surface outside by at most', LEAST_BOUND)}
        </FieldFaults>
        {/* not disabled while it runs: it would lose the keys */}
        <button
          type="button"
          className="button primary"
          disabled={isNothing}
          aria-disabled={isRunning || undefined}
          onClick={() => {
            if (!isRunning && !goToFault(own)) onRun();
          }}
        >
          Work it out
        </button>
      </p>
      <p className="quiet keepoutrow">
        For a duct grow by its radius and the margin: outside of what is made its centre line may run. A finer surface takes
        longer.
      </p>
      {faulty.length > 0 && (
        <p className="fitupnote watch" role="status">
          {faultyWords(faulty)}
        </p>
      )}
      {isNothing && <p className="fitupnote">Choose the parts whose space is to be kept free.</p>}
    </div>
  );
};
