import { useId, useState } from 'react';
import type { CarDocument } from '../../../geometry/index';
import { useWindow } from '../../shell/benchContext';
import { deleteQuestion, faultOfQuestionName, keepQuestion, renameQuestion } from '../../state/actions/questions';
import type { KeptPage } from './useQuestionPage';
import './kept.css';

interface KeptQuestionsProps {
  readonly document: CarDocument;
  readonly page: KeptPage;
  /** another question stands on the page now */
  readonly onChosen?: () => void;
  /** asks for the faults of the fields to be said, where they are not said at once */
  readonly onFaulty?: () => void;
}

/** The questions of a study that the car file keeps: chosen, kept under a name, renamed, deleted. */
export const KeptQuestions = ({ document, page, onChosen, onFaulty }: KeptQuestionsProps) => (
  // the field begins with the name of what is chosen
  <Questions key={page.name} document={document} page={page} onChosen={onChosen} onFaulty={onFaulty} />
);

const Questions = ({ document, page, onChosen, onFaulty }: KeptQuestionsProps) => {
  const { store } = useWindow();
  const id = useId();
  const { name: chosen, names, keepable, isChanged } = page;
  const [name, setName] = useState(chosen ?? '');
  const [said, setFault] = useState<{ readonly fault: string; readonly of: 'name' | 'question' } | null>(null);
  // a fault of the question goes as soon as it is mended
  const fault = said === null || (said.of === 'question' && 'question' in keepable) ? null : said.fault;
  const wanted = name.trim();
  const say = (found: string | null, of: 'name' | 'question' = 'name'): boolean => {
    setFault(found === null ? null : { fault: found, of });
    return found === null;
  };
  const onChoose = (next: string | null): void => {
    page.choose(next);
    onChosen?.();
  };
  const keep = () => {
    if ('fault' in keepable) {
      onFaulty?.();
      say(keepable.fault ?? 'The question has a fault: mend it first.', 'question');
      return;
    }
    if (!say(faultOfQuestionName(document, wanted, chosen))) return;
    keepQuestion(store, wanted, keepable.question);
    page.kept(wanted);
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
      {isChanged && (
        <>
          <span className="quiet">changed since it was kept</span>
          <button type="button" className="button bare" onClick={page.revert}>
            Back to what was kept
          </button>
        </>
      )}
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
            page.renamed(wanted);
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
