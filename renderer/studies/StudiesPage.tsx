import { Suspense, useCallback, useState } from 'react';
import { useBench, useWindow } from '../shell/benchContext';
import { useNarrow } from '../shell/useNarrow';
import { chooseStudy } from '../state/actions/lookAt';
import { TellRunContext, type RunLines } from './lastRun';
import { STUDIES, type Study } from './studies';
import './studies.css';

/** The questions asked of the car: their list, and the one that is chosen. */
export const StudiesPage = () => {
  const car = useBench((state) => state.file?.asRead ?? null);
  const chosenName = useBench((state) => state.study);
  const narrow = useNarrow();
  const [runs, setRuns] = useState<Readonly<Record<string, RunLines>>>({});
  const chosen = STUDIES.find(({ name }) => name === chosenName) ?? STUDIES[0];
  const name = chosen?.name;
  const tellRun = useCallback(
    (lines: RunLines) => {
      if (name !== undefined) setRuns((now) => ({ ...now, [name]: lines }));
    },
    [name],
  );
  if (!car || !chosen) return <p className="nostudies">No car is open. Open one, or a sample, from the file menu.</p>;
  return (
    <TellRunContext value={tellRun}>
      <StudyList chosen={chosen} narrow={narrow} lastRun={runs[chosen.name] ?? null} />
      <div className="study" key={chosen.name} data-study={chosen.name}>
        <Suspense>
          <chosen.Panel />
        </Suspense>
      </div>
    </TellRunContext>
  );
};

interface StudyListProps {
  readonly chosen: Study;
  readonly narrow: boolean;
  readonly lastRun: RunLines | null;
}

const StudyList = ({ chosen, narrow, lastRun }: StudyListProps) => {
  const { store } = useWindow();
  if (narrow)
    return (
      <div className="studymenu">
        <label className="choice">
          <span className="quiet">Study</span>
          <select
            aria-label="Study"
            value={chosen.name}
            onChange={(event) => chooseStudy(store, event.target.value as Study['name'])}
          >
            {STUDIES.map(({ name, label }) => (
              <option key={name} value={name}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <span className="quiet">{chosen.sentence}</span>
      </div>
    );
  return (
    <nav className="studylist" aria-label="Studies">
      <ul>
        {STUDIES.map(({ name, label, sentence }) => (
          <li key={name}>
            <button
              type="button"
              aria-current={name === chosen.name ? 'true' : undefined}
              onClick={() => chooseStudy(store, name)}
            >
              <b>{label}</b>
              <span>{sentence}</span>
            </button>
          </li>
        ))}
      </ul>
      {lastRun && (
        <div className="lastrun" role="status">
          <p className="quiet">Last run</p>
          {lastRun.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
    </nav>
  );
};
