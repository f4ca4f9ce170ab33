import { useCallback, useMemo, useState } from 'react';
import { binaryStl, type DrawnPart, type SideName, type Triple } from '../../../geometry/index';
import { useFieldFaults } from '../../look/controls/fieldFaults';
import { saveFile } from '../../look/saveFile';
import { useUnits } from '../../look/units';
import { useBench } from '../../shell/benchContext';
import { useKept } from '../../shell/keptState';
import { SHEET_PREFERENCES } from '../../sheet/sheetChoices';
import { preferredOf } from '../../state/preferences';
import { setupNamed } from '../../state/settings';
import { isSameDocument as isSameOrder } from '../../state/sameDocument';
import { FitUpProgress } from '../FitUpProgress';
import { FitUpQuestion } from '../FitUpQuestion';
import { FitUpWarnings } from '../FitUpWarnings';
import { askedSetups, keepOutOrder, meshesOfCar, type KeepOutAsked } from '../fitUpQuestion';
import type { TabProps } from '../tabProps';
import { useFitUp } from '../useFitUp';
import { FitUpView, NOTHING_SHOWN } from '../view/FitUpView';
import type { FitUpViewName } from '../view/fitUpContent';
import { KEEP_OUT_BEGIN, KeepOutForm } from './KeepOutForm';
import { keepOutName, subjectOf } from './keepOutNames';
import { keepOutWords, planeItems, SWEPT, sweptPart } from './keepOutItems';
import { planeNumbers, planePoints, sideOfPlane, TEMPLATE_BEGIN, templateOrder, type TemplateAsked } from './templateAsked';
import { TemplatePreview } from './TemplatePreview';
import { TemplateSection } from './TemplateSection';

const VIEWS: readonly { readonly name: FitUpViewName; readonly label: string }[] = [
  { name: 'corner', label: 'Corner' },
  { name: 'front', label: 'Front' },
  { name: 'side', label: 'Side' },
  { name: 'top', label: 'Top' },
];

const ABOUT = [SWEPT];

/** The space that parts sweep over everything that the wheels can do: to look at, and as an STL to build around. */
export const KeepOutTab = ({ document, setup, axle, asked, onAsk, tabs, cautions, theme }: TabProps) => {
  const units = useUnits();
  const preferences = useBench((state) => state.preferences);
  const [form, setForm] = useKept<KeepOutAsked>('fitup.keepOut.form', () => KEEP_OUT_BEGIN);
  const [view, setView] = useKept<FitUpViewName>('fitup.keepOut.view', () => 'corner');
  const { meshes } = meshesOfCar(document);
  const names = useMemo(
    () =>
      Object.entries(document.parts ?? {})
        .filter(([, part]) => part.axle === undefined || part.axle === axle)
        .map(([name]) => name),
    [document, axle],
  );
  const [own, setOwn] = useState<readonly string[]>([]);
  const takeDrawn = useCallback((parts: readonly DrawnPart[]) => {
    // rods, disc, strut tube and drive shaft of the axle's own numbers can be kept out of as well as parts
    setOwn(parts.filter(({ shapeKind }) => shapeKind === null).map(({ name }) => name));
  }, []);
  const wanted = keepOutOrder(document, axle, asked.sides, askedSetups(document, asked.without), form, meshes);
  // it takes seconds: it is worked out when it is asked for, and not while the question is still being put
  const [pressed, press] = useKept<typeof wanted | null>('fitup.keepOut.pressed', () => null);
  const order = pressed !== null && isSameOrder(pressed, wanted) ? pressed : null;
  const { state, last, cancel, again } = useFitUp('keepOut', order);
  const answered = last && last.order.question.axles[0] === axle ? last : null;
  const isChanged = answered !== null && !isSameOrder(answered.order, wanted);
  const [faulty, tellFault] = useFieldFaults();
  const isOld = isChanged || (answered !== null && faulty.length > 0);
  const made = answered && 'mesh' in answered.answer ? answered.answer : null;
  const refused = answered && 'refused' in answered.answer ? answered.answer.message : null;
  const side: SideName = asked.sides === 'right' ? 'right' : 'left';
  const more = useMemo((): readonly DrawnPart[] | undefined => (made ? [sweptPart(made)] : undefined), [made]);
  const place = useMemo(
    () => ({ setup: [setup, setupNamed(document, setup)] as const, side, travel: 0, from: 'standing' as const, rack: 0 }),
    [setup, document, side],
  );
  // where the right side alone was worked out its own points say where the plane is
  const planeSide = sideOfPlane(answered?.order.question.sides ?? []);
  const places = useMemo(() => planePoints(document, axle, planeSide), [document, axle, planeSide]);
  const wheel = useMemo((): Triple => places['wheelCentre'] ?? [0, 0, 0], [places]);
  const [template, askTemplate] = useKept<TemplateAsked>(`fitup.template.form.${axle}`, () => ({
    ...TEMPLATE_BEGIN,
    point: wheel,
    paper: preferredOf(preferences, SHEET_PREFERENCES.paper.name, SHEET_PREFERENCES.paper.words),
  }));
  const cut =
    made && answered
      ? templateOrder(
          answered.order.document,
          made,
          JSON.stringify(answered.order.question.setups.map(([name]) => name)),
          axle,
          answered.order.question.sides.length > 1 ? 'both' : (answered.order.question.sides[0] ?? 'left'),
          JSON.stringify(planeNumbers(template, wheel)),
          template.paper,
        )
      : null;
  const section = useFitUp('template', cut);
  // while another plane is cut the last section stays in sight; it is not what is saved
  const sections = cut !== null && section.last ? section.last : null;
  const sides = sections !== null && sections.order === cut ? sections.answer : null;
  const items = useMemo(() => planeItems(sections?.answer ?? []), [sections]);
  const shown = useMemo(() => (more ? { ...NOTHING_SHOWN, about: ABOUT, more, items } : NOTHING_SHOWN), [more, items]);
  const save = () => {
    if (!made || !answered) return;
    const title = `${document.name}: ${made.of.join(', ')}`;
    saveFile(
      `${keepOutName(document.name, answered.order.question)}.stl`,
      new Blob([binaryStl(made.mesh, title)], { type: 'model/stl' }),
    );
  };
  return (
    <>
      <div className="fituptable">
        <div className="fituphead">{tabs}</div>
        <FitUpQuestion document={document} axle={axle} asked={asked} onChange={onAsk}>
          <button type="button" className="button" disabled={made === null || isOld} onClick={save}>
            Save as STL
          </button>
        </FitUpQuestion>
        <section className={`answers fitupanswers${isOld ? ' old' : ''}`} aria-label="Keep-out">
          <KeepOutForm
            form={form}
            onForm={setForm}
            names={[...names, ...own]}
            isRunning={order !== null && state.kind === 'running'}
            faulty={faulty}
            tellFault={tellFault}
            onRun={() => (order === null ? press(wanted) : again())}
          />
          <FitUpProgress state={state} isOld={isOld} onCancel={cancel} onAgain={null} />
          {refused !== null && !isOld && (
            <p className="fitupnote watch" role="alert">
              <b>No mesh:</b> {/[.!?]$/.test(refused) ? refused : `${refused}.`}
            </p>
          )}
          {isChanged && <p className="fitupnote watch">What stands below is of before the last change.</p>}
          {made && (
            <dl className="loadnotes">
              {keepOutWords(made, units).map(([name, words]) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{words}</dd>
                </div>
              ))}
            </dl>
          )}
          {made && answered && (
            <TemplateSection
              car={document.name}
              question={answered.order.question}
              places={places}
              centre={wheel}
              asked={template}
              onAsk={askTemplate}
              sides={sides}
              grow={made.grow}
              state={section.state}
              onCancel={section.cancel}
              onAgain={section.again}
              isOld={isOld}
            />
          )}
          {made?.missing.map((words) => (
            <p key={words} className="fitupnote watch">
              Left out: {words}
            </p>
          ))}
          {made && <FitUpWarnings warnings={made.warnings} />}
        </section>
        {cautions}
      </div>
      <FitUpView
        document={document}
        axle={axle}
        meshes={meshes}
        place={place}
        shown={shown}
        subject={`${axle} ${side}`}
        view={view}
        views={VIEWS}
        onView={setView}
        title={made ? 'Space that is swept' : 'Nothing worked out yet'}
        subtitle={
          made && answered
            ? `${subjectOf(answered.order.question)}, blue; the car stands in ${setup}`
            : 'Choose what moves, then Work it out.'
        }
        theme={theme}
        onDrawn={takeDrawn}
      >
        {sections !== null && sections.answer.some((one) => 'drawing' in one) && <TemplatePreview sides={sections.answer} />}
      </FitUpView>
    </>
  );
};
