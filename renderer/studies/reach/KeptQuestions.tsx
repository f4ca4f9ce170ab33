import { useId, useState } from 'react';
import type { CarDocument, QuestionDocument } from '../../../geometry/index';
import { useWindow } from '../../shell/benchContext';
import { deleteQuestion, faultOfQuestionName, keepQuestion, renameQuestion } from '../../state/actions/questions';
import { isSameDocument } from '../../state/sameDocument';

interface KeptQuestionsProps {
  readonly document: CarDocument;
  /** the kept question that stands on the page; null: a new one */
  readonly chosen: string | null;
  /** what stands on the page; null while it has faults */
  readonly question: QuestionDocument | null;
  readonly onChoose: (name: string | null) => void;
  /** what stands on the page is kept under that name now */
  readonly onKept: (name: string) => void;
  /** asks for the faults to be said */
  readonly onFaulty: () => void;
}

/** The questions that the car file keeps: chosen, kept under a name, renamed, deleted. */
export const KeptQuestions = ({ document, chosen, question, onChoose, onKept, onFaulty }: KeptQuestionsProps) => {
  const { store } = useWindow();
  const id = useId();
  const names = Object.keys(document.questions ?? {});
  const [name, setName] = useState(chosen ?? '');
  const [fault, setFault] = useState<string | null>(null);
  const wanted = name.trim();
  const kept = chosen === null ? undefined : document.questions?.[chosen];
  const isChanged = kept !== undefined && (question === null || !isSameDocument(question, kept));
  const say = (said: string | null): boolean => {
    setFault(said);
    return said === null;
  };
  const keep = () => {
    if (question === null) return onFaulty();
    if (!say(faultOfQuestionName(document, wanted, chosen))) return;
    keepQuestion(store, wanted, question);
    onKept(wanted);
  };
  return (
    <div className="keptquestions">
      <label className="choice">
        <span className="quiet">Question</span>
        <select
          className="pick"
          aria-label="Kept question"
          value={chosen === null ? '' : `=${chosen}`}
          onChange={(event) => onChoose(event.target.value === '' ? null : event.target.value.slice(1))}
        >
          <option value="">a new one</option>
          {names.map((one) => (
            <option key={one} value={`=${one}`}>
              {one}
            </option>
          ))}
        </select>
      </label>
      {isChanged && <span className="quiet">changed since it was kept</span>}
      <span className="spread" />
      <input
        type="text"
        className="namefield"
        aria-label="Name of the question"
        placeholder="name to keep it under"
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : id}
        value={name}
        onChange={(event) => {
          setName(event.target.value);
          setFault(null);
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          keep();
        }}
      />
      <button type="button" className="button" title="Into the car file; one step of undo" onClick={keep}>
        {chosen !== null && wanted === chosen ? 'Keep changes' : 'Keep'}
      </button>
      {chosen !== null && wanted !== chosen && (
        <button
          type="button"
          className="button"
          onClick={() => {
            if (!say(faultOfQuestionName(document, wanted, chosen))) return;
            renameQuestion(store, chosen, wanted);
            onKept(wanted);
          }}
        >
          Rename
        </button>
      )}
      {chosen !== null && (
        <button
          type="button"
          className="button"
          onClick={() => {
            deleteQuestion(store, chosen);
            onChoose(null);
          }}
        >
          Delete
        </button>
      )}
      {fault !== null && (
        <p id={id} className="qfault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
};
