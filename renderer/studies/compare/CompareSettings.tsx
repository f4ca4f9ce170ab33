import { PartDrawing } from '../../adjusters/parts/PartDrawing';
import type { SettingsCompared, PartStands } from './settingRows';

interface CompareSettingsProps {
  readonly compared: SettingsCompared;
  /** the setup on the bench first */
  readonly names: readonly string[];
  readonly axles: number;
  readonly onCar: string | null;
  /** puts a setup on the sheet, by its place among the names; null: it is not one of this car file */
  readonly toSheet: (index: number) => (() => void) | null;
}

/** What differs in the settings, drawn as the parts stand and in the fitter's words. */
export const CompareSettings = ({ compared: { rows, alike, sentences }, names, axles, onCar, toSheet }: CompareSettingsProps) => (
  <section className="answers comparesettings" aria-label="Settings that differ">
    <div className="answershead">
      <h2>Settings that differ</h2>
      <span className="quiet">
        {rows.length} of {rows.length + alike.length}
      </span>
      <span className="spread" />
      {onCar !== null && <span className="quiet">{onCar} is on the car</span>}
    </div>
    <div className="answertable" tabIndex={0} role="region" aria-label="Table of settings">
      <table>
        <thead>
          <tr>
            <th scope="col">Part</th>
            {names.map((name, index) => (
              <th key={name} scope="col">
                {name} <ToSheet name={name} onPress={toSheet(index)} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={`${row.axle}.${row.name}`}>
              <th scope="row">
                <b>{row.label}</b>
                {axles > 1 && <span className="unit"> {row.axle}</span>}
              </th>
              {row.stands.map((stand, index) => (
                <td key={names[index]}>{stand ? <Standing stand={stand} /> : <span className="quiet">no such part</span>}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length === 0 && <p className="alike">Every part stands alike.</p>}
      {sentences.map(({ against, sentence }) => (
        <p key={against + sentence} className="alike">
          {sentence} <span className="unit">in {against}</span>
        </p>
      ))}
      {alike.length > 0 && <p className="alike quiet">Alike in all: {alike.map((label) => label.toLowerCase()).join(', ')}.</p>}
    </div>
  </section>
);

const ToSheet = ({ name, onPress }: { readonly name: string; readonly onPress: (() => void) | null }) =>
  onPress && (
    <button type="button" className="button small" aria-label={`${name} to the sheet`} onClick={onPress}>
      To the sheet
    </button>
  );

const Standing = ({ stand }: { readonly stand: PartStands }) => (
  <span className="wayparts" title={stand.detail}>
    <PartDrawing
      adjuster={stand.adjuster}
      value={stand.left}
      mm={stand.mm}
      pivotToBolt={stand.pivotToBolt}
      size={30}
      className="mini"
    />
    <span className="waywords">{stand.words}</span>
  </span>
);
