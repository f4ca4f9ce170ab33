import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { parseCar } from '../../../geometry/index';
import type { CopyNote, FileService } from '../../../renderer/files/fileService';
import { withDraft } from '../../../renderer/points/fields/TryDraft';
import { judgeEdit } from '../../../renderer/points/fields/judgeEdit';
import { FIRST_CHOICE, newCarDocument } from '../../../renderer/points/newCar/newCarDocument';
import { isTypical, stepsOf } from '../../../renderer/points/newCar/newCarSteps';
import { beginAxlesAnew, beginCar, withAxlesAnew } from '../../../renderer/state/actions/beginCar';
import { editCar, movePoint } from '../../../renderer/state/actions/editCar';
import { undoStep } from '../../../renderer/state/actions/editSetup';
import { keepCopies } from '../../../renderer/state/actions/keepCopies';
import { offerCopy, takeCopy, wasNeverSaved } from '../../../renderer/state/actions/recoverCar';
import { tryCar } from '../../../renderer/state/actions/tryCar';
import { benchOf, isUnsaved } from '../../../renderer/state/benchStore';
import { setupNamed, withSetting, withSetup } from '../../../renderer/state/settings';
import type { BegunCar } from '../../../renderer/state/begunCar';
import { openedBench } from '../carUnderTest';

const begin = () => {
  const store = openedBench();
  expect(beginCar(store, FIRST_CHOICE, newCarDocument(FIRST_CHOICE))).toBe(true);
  const document = () => benchOf(store.getState())?.document ?? newCarDocument(FIRST_CHOICE);
  const begun = (): BegunCar => store.getState().file?.begun ?? { choice: FIRST_CHOICE, documents: [] };
  const noteOf = (name: string) => stepsOf(begun(), document()).find((step) => step.name === name);
  return { store, document, begun, noteOf };
};

describe('a car that was begun here', () => {
  test('is unsaved from the start, and again after everything was undone', () => {
    const { store } = begin();
    expect(isUnsaved(store.getState())).toBe(true);
    movePoint(store, 'front', 'left', 'ballJoint', [9, 725, 196], 'Move ball joint');
    undoStep(store);
    expect(isUnsaved(store.getState())).toBe(true);
  });

  test('says in each step what is there and what is missing', () => {
    const { store, noteOf, begun, document } = begin();
    const count = Object.keys(document().front?.points ?? {}).length + Object.keys(document().rear?.points ?? {}).length;
    expect(noteOf('points')).toMatchObject({ note: `${count} of ${count} still typical`, isDone: false });
    movePoint(store, 'front', 'left', 'ballJoint', [9, 725, 196], 'Move ball joint');
    expect(noteOf('points')?.note).toBe(`${count - 1} of ${count} still typical`);
    expect(isTypical(begun(), document(), 'front', 'ballJoint')).toBe(false);
    expect(isTypical(begun(), document(), 'front', 'armRear')).toBe(true);
    expect(noteOf('spring')?.note).toBe('no rate, no damper, no bar yet');
    expect(noteOf('wheel')?.note).toBe('no tyre width, no mass yet');
    editCar(store, 'Add mass', (car) => ({ ...car, body: { mass: 1200 } }));
    expect(noteOf('wheel')?.note).toBe('no tyre width yet');
    editCar(store, 'Add tyre', (car) => ({ ...car, front: { ...car.front!, wheel: { ...car.front!.wheel, tyreWidth: 205 } } }));
    expect(noteOf('wheel')?.note).toBe('rear: no tyre width yet');
    expect(noteOf('adjusters')).toMatchObject({ note: 'none yet', isDone: false });
    expect(noteOf('layout')?.note).toBe('strut, three rods and a blade arm');
  });

  test('gets another layout on one axle in one step: the other axle and the name stay, undo brings all of it back', () => {
    const { store, document, begun, noteOf } = begin();
    movePoint(store, 'front', 'left', 'ballJoint', [9, 725, 196], 'Move ball joint');
    editCar(store, 'Add adjuster', (car) => ({
      ...car,
      ...(car.rear && {
        rear: { ...car.rear, adjusters: { toeRod: { kind: 'turnbuckle', rod: 'toe', perTurn: 1.5, range: [-5, 5], step: 0.5 } } },
      }),
      setups: { Baseline: { rear: { both: { toeRod: 1 } }, front: { setToe: 0 } } },
      limits: [
        { setting: 'toeRod', max: 3 },
        { reading: 'camber', axle: 'front', max: 0 },
      ],
    }));
    const before = document();
    const choice = { ...FIRST_CHOICE, rear: 'fiveRods' as const };
    const fresh = newCarDocument(choice);
    const changed = withAxlesAnew(before, begun().choice, choice, fresh);
    beginAxlesAnew(store, choice, fresh, changed);
    expect(judgeEdit({ ...document(), setups: { Baseline: {} } })).toEqual([]);
    expect(document().front).toBe(before.front);
    expect(document().rear).toEqual(fresh.rear);
    expect(document().setups).toEqual({ Baseline: { front: { setToe: 0 } } });
    expect(document().limits).toEqual([{ reading: 'camber', axle: 'front', max: 0 }]);
    expect(Object.keys(document()).slice(0, 6)).toEqual(['format', 'version', 'name', 'units', 'front', 'rear']);
    expect(noteOf('layout')?.note).toBe('strut, five rods');
    expect(isTypical(begun(), document(), 'rear', 'wheelCentre')).toBe(true);
    expect(isTypical(begun(), document(), 'front', 'ballJoint')).toBe(false);
    undoStep(store);
    expect(document()).toBe(before);
  });
});

test('a recovery copy of a new car is kept without a change, and after recovery it is still in no file', async () => {
  vi.useFakeTimers();
  onTestFinished(() => void vi.useRealTimers());
  const copies = new Map<string, { note: CopyNote; text: string }>();
  const origins = new Map<string, string>();
  const files = {
    keepOrigin: async ({ id, text }: { id: string; text: string }) => (origins.set(id, text), { ok: true, value: null }),
    keepCopy: async (asked: { note: CopyNote; text: string }) => (copies.set(asked.note.id, asked), { ok: true, value: null }),
    dropCopy: async ({ id }: { id: string }) => (copies.delete(id), { ok: true, value: null }),
    readCopy: async ({ id }: { id: string }) => {
      const kept = copies.get(id);
      return (
        kept && {
          ok: true,
          value: { ...kept, note: { ...kept.note, endedAt: null, folder: null }, origin: origins.get(id) ?? null },
        }
      );
    },
  } as unknown as FileService;
  const store = openedBench();
  const keeper = keepCopies(store, files);
  beginCar(store, { ...FIRST_CHOICE, name: 'Fen saloon' }, newCarDocument({ ...FIRST_CHOICE, name: 'Fen saloon' }));
  await vi.advanceTimersByTimeAsync(600);
  keeper.stop();
  const [copy] = [...copies.values()];
  if (!copy) throw new Error('no copy was kept');
  expect(copy.note).toMatchObject({ title: 'Fen saloon', file: null, sample: null, savedAt: null });
  const read = parseCar(copy.text);
  expect(read.ok && read.value.document).toEqual(benchOf(store.getState())?.document);

  const after = openedBench();
  const keeping = keepCopies(after, files);
  onTestFinished(keeping.stop);
  await offerCopy(after, files, { id: copy.note.id } as Parameters<typeof offerCopy>[2]);
  const { offer } = after.getState().files;
  if (!offer || 'unfinished' in offer) throw new Error('no offer');
  expect(wasNeverSaved(offer)).toBe(true);
  takeCopy(after, offer);
  expect(isUnsaved(after.getState())).toBe(true);
  undoStep(after);
  expect(isUnsaved(after.getState())).toBe(true);
  await vi.advanceTimersByTimeAsync(5000);
  expect(copies.size).toBe(1);
});

describe('an adjuster that is being made', () => {
  const slide = { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-10, 10], step: 1 };

  test('is tried before it is taken: answered and shown, in no document, no undo step, gone again', () => {
    const { store, document } = begin();
    const before = store.getState();
    const tried = withDraft(document(), 'front', '', slide);
    if (!tried) throw new Error('the draft is sound');
    const setup = before.history?.present.setup ?? '';
    const at = (mm: number) =>
      withSetup(tried.document, setup, withSetting(setupNamed(tried.document, setup), 'front', tried.name, 'both', mm));
    tryCar(store, at(-5));
    const { answer, shown, history } = store.getState();
    expect(history).toBe(before.history);
    if (!answer?.ok || !answer.value.compared.ok) throw new Error('it closes');
    // a strut top 5 mm inboard tilts the wheel's top in
    expect(answer.value.row.left.camber as number).toBeLessThan((answer.value.compared.value.left.camber as number) - 0.3);
    expect(answer.value.against).toBe('without it');
    expect(shown?.row).toBe(answer.value.row);
    expect(isUnsaved(store.getState())).toBe(true);
    movePoint(store, 'front', 'left', 'ballJoint', [9, 725, 196], 'Move ball joint');
    expect(store.getState().trial).toBeNull();
    undoStep(store);
    tryCar(store, at(2));
    tryCar(store, null);
    expect(store.getState().answer).toEqual(before.answer);
  });

  test('cannot be tried while something is missing, and is not tried under a name that is taken', () => {
    const { store, document } = begin();
    expect(withDraft(document(), 'front', 'topPlate', {})).toBeNull();
    expect(withDraft(document(), 'front', 'topPlate', { ...slide, range: undefined })).toBeNull();
    expect(withDraft(document(), 'front', 'topPlate', { ...slide, moves: 'nowhere' })).toBeNull();
    editCar(store, 'Add adjuster', () => withDraft(document(), 'front', 'topPlate', slide)?.document ?? document());
    expect(withDraft(document(), 'front', 'topPlate', slide)?.name).toBe('partBeingMade');
  });
});
