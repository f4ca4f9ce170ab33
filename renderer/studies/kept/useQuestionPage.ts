import { useMemo } from 'react';
import type { AskedStudy, AxleName, CarDocument, KeptQuestionDocument } from '../../../geometry/index';
import { useWindow } from '../../shell/benchContext';
import { chooseAxle } from '../../state/actions/lookAt';
import { isSameDocument } from '../../state/sameDocument';
import { useKept } from '../../shell/keptState';
import type { Keepable } from './keptParts';

/** Questions of one study. */
export type QuestionOf<Ask extends AskedStudy> = Ask extends 'reach'
  ? Exclude<KeptQuestionDocument, { readonly ask: Exclude<AskedStudy, 'reach'> }>
  : Extract<KeptQuestionDocument, { readonly ask: Ask }>;

/** How a study's form and the question that the file keeps become one another. */
export interface QuestionForms<Ask extends AskedStudy, Form> {
  readonly ask: Ask;
  /** the form with its blanks */
  readonly begin: () => Form;
  readonly formOf: (question: QuestionOf<Ask>) => Form;
  readonly questionOf: (form: Form) => Keepable<QuestionOf<Ask>>;
}

/** What stands on the page of a study: a kept question or a new one, and its form. */
interface OnPage<Form, Question> {
  readonly name: string | null;
  readonly form: Form;
  /** that question, as the form was filled from it or kept */
  readonly kept: Question | null;
}

/** The questions that the file keeps for a study, and the one that stands on its page. */
export interface KeptPage {
  /** the kept question that stands on the page; null: a new one */
  readonly name: string | null;
  /** names of those that the file keeps for this study */
  readonly names: readonly string[];
  readonly keepable: Keepable<KeptQuestionDocument>;
  /** what stands on the page is no longer what the file keeps under its name */
  readonly isChanged: boolean;
  readonly choose: (name: string | null) => void;
  /** what stands on the page is kept under that name now */
  readonly kept: (name: string) => void;
  /** the kept question has that name now */
  readonly renamed: (name: string) => void;
  /** gives up what was changed since it was kept */
  readonly revert: () => void;
}

/** The page of a study: its form, and the questions that the file keeps for it. */
export interface QuestionPage<Form> extends KeptPage {
  readonly form: Form;
  readonly change: (next: Form | ((now: Form) => Form)) => void;
}

const isOf = <Ask extends AskedStudy>(question: KeptQuestionDocument | undefined, ask: Ask): question is QuestionOf<Ask> =>
  question !== undefined && (question.ask ?? 'reach') === ask;

/** The questions of one study that the file keeps, in their order. */
export const keptFor = (document: CarDocument, ask: AskedStudy): readonly string[] =>
  Object.entries(document.questions ?? {}).flatMap(([name, question]) => (isOf(question, ask) ? [name] : []));

/** The form of a study, filled from a question that the file keeps or a new one; it begins with the first kept of this axle. */
export const useQuestionPage = <Ask extends AskedStudy, Form>(
  document: CarDocument,
  axle: AxleName,
  { ask, begin, formOf, questionOf }: QuestionForms<Ask, Form>,
): QuestionPage<Form> => {
  const { store } = useWindow();
  const names = keptFor(document, ask);
  const keptAs = (name: string | null): QuestionOf<Ask> | null => {
    const question = name === null ? undefined : document.questions?.[name];
    return isOf(question, ask) ? question : null;
  };
  const pageOf = (name: string | null): OnPage<Form, QuestionOf<Ask>> => {
    const kept = keptAs(name);
    return kept === null ? { name: null, form: begin(), kept } : { name, form: formOf(kept), kept };
  };
  const [stored, setPage] = useKept(`${ask}.page`, () =>
    pageOf(names.find((name) => (axleAsked(keptAs(name)) ?? axle) === axle) ?? null),
  );
  const kept = keptAs(stored.name);
  const page = useMemo(() => followed(stored, kept, formOf), [stored, kept, formOf]);
  // what was typed into one question is there again after a look at another
  const [drafts, setDrafts] = useKept<Drafts<OnPage<Form, QuestionOf<Ask>>>>(`${ask}.drafts`, () => new Map());
  const keepable = questionOf(page.form);
  const asKept = kept && questionOf(formOf(kept));
  const isMoved = kept !== null && (axleAsked(kept) ?? axle) !== axle;
  const isChanged = kept !== null && (isMoved || !isSameDocument(keepable, asKept));
  const isTyped = kept === null ? !isSameDocument(page.form, begin()) : isChanged;
  return {
    name: page.name,
    names,
    form: page.form,
    keepable,
    isChanged,
    change: (next) =>
      setPage((now) => {
        const { form, ...rest } = followed(now, keptAs(now.name), formOf);
        return { ...rest, form: typeof next === 'function' ? (next as (now: Form) => Form)(form) : next };
      }),
    choose: (name) => {
      setDrafts((now) => withDraft(now, isTyped ? page : null, page.name));
      setPage(drafts.get(name) ?? pageOf(name));
      const of = axleAsked(keptAs(name));
      if (of !== null && of !== axle) chooseAxle(store, of);
    },
    kept: (name) => 'question' in keepable && setPage({ ...page, name, kept: keepable.question }),
    renamed: (name) => setPage({ ...page, name }),
    revert: () => setPage(pageOf(page.name)),
  };
};

/** Changed pages that another question was looked at over, by the name of their own; null: a new one. */
type Drafts<Page> = ReadonlyMap<string | null, Page>;

const withDraft = <Page>(drafts: Drafts<Page>, page: Page | null, name: string | null): Drafts<Page> => {
  const next = new Map(drafts);
  if (page === null) next.delete(name);
  else next.set(name, page);
  return next;
};

/** The axle that a kept question is asked of; null: it names none, or several. */
const axleAsked = (question: KeptQuestionDocument | null): AxleName | null =>
  question !== null && 'axle' in question ? (question.axle ?? null) : null;

/** The page after the car was changed: a kept question that was told new names of parts is shown with them. */
const followed = <Form, Question>(
  page: OnPage<Form, Question>,
  kept: Question | null,
  formOf: (question: Question) => Form,
): OnPage<Form, Question> => {
  if (page.name === null) return page;
  if (kept === null || page.kept === null) return { ...page, name: null, kept: null };
  if (isSameDocument(kept, page.kept)) return page;
  const isUntouched = isSameDocument(formOf(page.kept), page.form);
  return { ...page, kept, form: isUntouched ? formOf(kept) : page.form };
};
