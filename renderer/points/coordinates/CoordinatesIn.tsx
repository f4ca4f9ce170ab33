import { useEffect, useMemo, useRef, useState, type ChangeEvent } from 'react';
import { takePoints } from '../../../geometry/index';
import { VerdictShape } from '../../look/controls/VerdictShape';
import { useBench, useWindow } from '../../shell/benchContext';
import { editCar } from '../../state/actions/editCar';
import { faultOf, judgeEdit } from '../fields/judgeEdit';
import { isTypical } from '../newCar/newCarSteps';
import { ListOptions } from './ListOptions';
import { ListPreview } from './ListPreview';
import { answerList, nameRow, type ListAnswer, type ListQuestion, type Obstacle } from './question';

const listWords = ({ file }: ListQuestion, { list, unit }: ListAnswer): string =>
  [file ?? 'pasted', `${list.rows.length} rows`, list.separator, `decimal ${list.decimal}`, ...(unit ? [unit] : [])].join(', ');

const countOf = (points: number): string => (points === 1 ? '1 point' : `${points} points`);

interface CoordinatesInProps {
  /** kept by the page: a panel that was closed comes back with what was said in it */
  readonly question: ListQuestion;
  /** what is added was kept from the list before */
  readonly isShiftKept: boolean;
  readonly onAsk: (question: ListQuestion) => void;
  /** closed after it was taken: the list goes, its frame stays for the next one */
  readonly onTaken: () => void;
  readonly onClose: () => void;
}

/** A list of coordinates read in: how it is to be understood, every point of it beside what it replaces, and then taken. */
export const CoordinatesIn = ({ question, isShiftKept, onAsk, onTaken, onClose }: CoordinatesInProps) => {
  const { store } = useWindow();
  const axle = useBench((state) => state.axle);
  const car = useBench((state) => state.history?.present.document ?? null);
  const begun = useBench((state) => state.file?.begun);
  const measuredIn = begun?.choice.unit ?? null;
  const [refused, setRefused] = useState<string | null>(null);
  /** the document that was made by taking the list, with its words: they are true as long as it stands */
  const [taken, setTaken] = useState<{ readonly car: typeof car; readonly words: string } | null>(null);
  const opener = useRef<HTMLInputElement>(null);
  const paste = useRef<HTMLTextAreaElement>(null);
  useEffect(() => paste.current?.focus(), []);
  const isUnmeasured = car !== null && Object.keys(car[axle]?.points ?? {}).every((point) => isTypical(begun, car, axle, point));
  const answer = useMemo(
    () => (car ? answerList(car, axle, question, measuredIn, isUnmeasured) : null),
    [car, axle, question, measuredIn, isUnmeasured],
  );
  if (!car || !answer) return null;
  const told = taken?.car === car ? taken.words : null;
  const ask = (part: Partial<ListQuestion>) => {
    setRefused(null);
    setTaken(null);
    onAsk({ ...question, ...part });
  };
  const name = (row: string, point: string | null) =>
    ask({ names: nameRow(question, answer.rows, row, point), guessed: question.guessed.filter((one) => one !== row) });
  const read = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    event.target.value = '';
    if (file) ask({ text: await file.text(), file: file.name, names: {}, guessed: [], datumRows: {} });
  };
  const points = answer.brought?.points ?? [];
  const ready = answer.brought !== null && answer.obstacles.length === 0 && points.length > 0;
  const take = () => {
    const changed = takePoints(car, { axle, sides: answer.sides }, points);
    const fault = faultOf(judgeEdit(changed), []);
    if (fault !== null) return setRefused(`With these points the car has a fault, and nothing was taken. ${fault}`);
    editCar(store, `Take ${countOf(points.length)}`, () => changed);
    setTaken({
      car: store.getState().history?.present.document ?? null,
      words: `${countOf(points.length)} taken, in one undo step.`,
    });
  };
  const [obstacle] = answer.obstacles;
  const isEmpty = question.text.trim() === '';
  return (
    <section className="coordinates" aria-label="Coordinates in">
      <div className="coordhead">
        <h2>Coordinates in</h2>
        <span className="quiet">{isEmpty ? `to the ${axle} axle; name, x, y, z in each row` : listWords(question, answer)}</span>
        {told !== null && (
          <span className="chip within" role="status">
            <VerdictShape verdict="within" />
            {told}
          </span>
        )}
        <span className="spread" />
        <button type="button" className="button" onClick={() => opener.current?.click()}>
          {question.file === null ? 'Choose a file…' : 'Another file…'}
        </button>
        <input
          ref={opener}
          type="file"
          hidden
          accept=".csv,.txt,.tsv,text/*"
          aria-label="List of points"
          onChange={(event) => void read(event)}
        />
        <button
          type="button"
          className="button"
          onClick={() => {
            if (told !== null) onTaken();
            onClose();
          }}
        >
          Close
        </button>
        <button type="button" className="button primary" disabled={!ready} onClick={take}>
          {points.length > 0 ? `Take ${countOf(points.length)}` : 'Take the points'}
        </button>
      </div>
      {(refused !== null || obstacle) && (
        <Banner
          obstacle={refused === null && obstacle ? obstacle : { text: refused ?? '', name: null, suggestion: null }}
          more={refused === null ? moreWords(answer.obstacles.slice(1)) : ''}
          onName={name}
          onFillIn={(likely) =>
            ask({ names: { ...question.names, ...likely }, guessed: [...question.guessed, ...Object.keys(likely)] })
          }
          onLeaveOut={(rows) => ask({ names: { ...question.names, ...Object.fromEntries(rows.map((row) => [row, null])) } })}
        />
      )}
      <div className="coordbody">
        <label className="paste">
          <span>The list</span>
          <textarea
            ref={paste}
            value={question.text}
            aria-label="The list"
            spellCheck={false}
            placeholder={'armFront; 8,7; 348; 195\nballJoint; 11; 728,6; 197'}
            onChange={(event) => ask({ text: event.target.value, file: null, names: {}, guessed: [], datumRows: {} })}
          />
        </label>
        <ListOptions
          car={car}
          axle={axle}
          question={question}
          answer={answer}
          isShiftKept={isShiftKept}
          isTypical={(point) => isTypical(begun, car, axle, point)}
          onAsk={ask}
        />
        <ListPreview car={car} axle={axle} answer={answer} names={question.names} guessed={question.guessed} onName={name} />
      </div>
    </section>
  );
};

/** How many rows, or else reasons, stand in the way beside the one that is told. */
const moreWords = (others: readonly Obstacle[]): string => {
  if (others.length === 0) return '';
  const isOfRows = others.every(({ name, rows }) => name !== null || rows !== undefined);
  const count = others.reduce((sum, { rows }) => sum + (rows?.length ?? 1), 0);
  return `${count} more ${isOfRows ? (count === 1 ? 'row' : 'rows') : count === 1 ? 'fault' : 'faults'}. `;
};

interface BannerProps {
  readonly obstacle: Obstacle;
  /** what else stands in the way, in one sentence; empty where nothing does */
  readonly more: string;
  readonly onName: (row: string, point: string | null) => void;
  readonly onFillIn: (likely: Readonly<Record<string, string>>) => void;
  readonly onLeaveOut: (rows: readonly string[]) => void;
}

const Banner = ({ obstacle: { text, name, suggestion, rows, likely = {} }, more, onName, onFillIn, onLeaveOut }: BannerProps) => (
  <div className="banner" role="alert">
    <VerdictShape verdict="broken" />
    <div>
      <b>{text}</b>{' '}
      {suggestion !== null && (
        <>
          Did you mean <u>{suggestion}</u>?{' '}
        </>
      )}
      {more}Nothing has been taken; the list and your choices are kept.
    </div>
    {name !== null && suggestion !== null && (
      <button type="button" className="button" onClick={() => onName(name, suggestion)}>
        Use {suggestion}
      </button>
    )}
    {name !== null && (
      <button type="button" className="button" onClick={() => onName(name, null)}>
        Leave row out
      </button>
    )}
    {Object.keys(likely).length > 0 && (
      <button type="button" className="button" onClick={() => onFillIn(likely)}>
        Fill in {Object.keys(likely).length} likely
      </button>
    )}
    {rows && (
      <button type="button" className="button" onClick={() => onLeaveOut(rows)}>
        {rows.length === 1 ? 'Leave it out' : `Leave all ${rows.length} out`}
      </button>
    )}
  </div>
);
