import { expect, test } from 'vitest';
import { serializeCar } from '../../../geometry/index';
import { FIRST_CHOICE, newCarDocument } from '../../../renderer/points/newCar/newCarDocument';
import { emptyCar } from '../../../renderer/points/newCar/unfinishedCar';
import { beginCar, beginUnfinished, showUnfinished } from '../../../renderer/state/actions/beginCar';
import { choosePage } from '../../../renderer/state/actions/lookAt';
import { openCarText } from '../../../renderer/state/actions/openCar';
import { prefer } from '../../../renderer/state/actions/prefer';
import { chosenUnits, UNIT_PREFERENCES } from '../../../renderer/state/chosenUnits';
import { carText, openedBench } from '../carUnderTest';

const IN_INCHES = { ...FIRST_CHOICE, unit: 'in' } as const;

test('a new car measured in inches is read in inches, and no other car is', () => {
  const store = openedBench();
  const length = () => chosenUnits(store.getState()).length;
  beginCar(store, IN_INCHES, newCarDocument(IN_INCHES));
  expect(length()).toBe('in');
  expect(store.getState().preferences).not.toHaveProperty(UNIT_PREFERENCES.length.name);
  openCarText(store, 'another', null, carText('car-23'));
  expect(length()).toBe('mm');
});

test('who never chose a unit reads a car as its file has it, who chose one reads every car in that', () => {
  const store = openedBench();
  const length = () => chosenUnits(store.getState()).length;
  const inInches = serializeCar(newCarDocument(IN_INCHES));
  openCarText(store, 'in inches', null, inInches);
  expect(length()).toBe('in');
  openCarText(store, 'another', null, carText('car-23'));
  expect(length()).toBe('mm');
  prefer(store, UNIT_PREFERENCES.length.name, 'mm');
  openCarText(store, 'in inches', null, inInches);
  expect(length()).toBe('mm');
});

test('it is read in another unit once that is chosen, even where it is the one that other cars are read in; the next new car is not', () => {
  const store = openedBench();
  const length = () => chosenUnits(store.getState()).length;
  beginCar(store, IN_INCHES, newCarDocument(IN_INCHES));
  prefer(store, UNIT_PREFERENCES.length.name, 'mm');
  expect(length()).toBe('mm');
  prefer(store, UNIT_PREFERENCES.length.name, 'in');
  expect(length()).toBe('in');
  beginCar(store, FIRST_CHOICE, newCarDocument(FIRST_CHOICE));
  expect(length()).toBe('mm');
  openCarText(store, 'another', null, carText('car-23'));
  expect(length()).toBe('in');
});

test('one whose points are being given in inches is read so on its own page, and the car on the bench is not', () => {
  const store = openedBench();
  const length = () => chosenUnits(store.getState()).length;
  choosePage(store, 'points');
  beginUnfinished(store, emptyCar(IN_INCHES, null));
  showUnfinished(store, true);
  expect(length()).toBe('in');
  choosePage(store, 'bench');
  expect(length()).toBe('mm');
  choosePage(store, 'points');
  showUnfinished(store, false);
  expect(length()).toBe('mm');
});
