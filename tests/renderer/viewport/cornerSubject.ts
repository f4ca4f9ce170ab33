import type { Subject } from '../../../renderer/viewport/views';

/** A front left corner that a view is framed on [mm]. */
export const cornerSubject: Subject = {
  axle: 'front',
  scope: 'left',
  points: [
    [300, 300, 0],
    [-300, 800, 640],
    [0, 700, 850],
    [0, 350, 200],
  ],
  joints: [],
  spindle: [0, 1, 0],
  steeringAxis: [-0.06, -0.2, 0.97],
};
