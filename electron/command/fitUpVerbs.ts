import { AXLE, COMMON, RACK, ROLL, SETUPS, SIDE, TRAVEL, WORKERS } from './commonOptions';
import type { OptionSpec, VerbSpec } from './optionSpecs';

const SETUPS_IN_USE = { ...SETUPS, help: 'the setups in use; all of the file when neither they nor --setup are given' };

/** Which parts' sweep is asked for, and how. */
const SWEPT: readonly OptionSpec[] = [
  { name: 'of', kind: 'names', value: 'A,B|all-moving', help: 'names of parts, or all that moves against the body' },
  { name: 'grow', kind: 'number', value: 'MM', help: 'what it is grown by all round: radius and margin; 0 when not given' },
  {
    name: 'bound',
    kind: 'number',
    value: 'MM',
    help: 'its corners and the middles of its triangles are no farther out than this; 2 when not given, 0.1 or more',
  },
];

/** The verbs of fit-up: what touches, what binds, what a link carries. */
export const FIT_UP_VERBS: readonly VerbSpec[] = [
  {
    name: 'clearance',
    positional: 'CAR',
    takesCar: true,
    summary: 'the least distance of every two parts that move against each other, and what would clear it',
    details: [
      "Over everything that each wheel can do: travel from the damper fully open to solid, the rack from lock to lock, in all setups that are asked for. Parts are those of the car file's parts, and rods, disc, strut tube and drive shaft by their own sizes.",
      'The worst is found to 0.05 mm. How much less it could be between the positions that were looked at is printed beside it; a pair that this leaves open is looked at more closely, and where that is not enough it says not proved.',
      'What turns freely counts with its whole ring: what hangs on the wheel, and a part on a rod that can turn about its own line, unless it says how it is held. Where the inside of the rim is described, the tyre is a ring around it.',
      "With --ground also the lowest point of every part over the ground: where the car stands, with both tyres of one side flat and the car on their rims, and with every damper solid. The margin is the file's margins.ground, else 0; tyres, rims and what touches the ground are left out.",
    ],
    options: [
      SETUPS_IN_USE,
      AXLE,
      { ...SIDE, help: 'the wheels of this side only; both when not given' },
      {
        name: 'ground',
        kind: 'flag',
        value: '',
        help: 'the lowest points over the ground too, also with both tyres of one side flat',
      },
      WORKERS,
      ...COMMON,
    ],
    examples: [
      'jounce clearance samples/saltmarsh-hatch.jounce.json --axle front',
      'jounce clearance samples/saltmarsh-hatch.jounce.json --setups Wet --ground',
    ],
  },
  {
    name: 'joints',
    positional: 'CAR',
    takesCar: true,
    summary: 'how far every joint tilts over travel and lock, and how its bolt would be best',
    details: [
      "Over everything that each wheel can do: from the damper fully open to solid, from lock to lock, in the setups in use, on both sides. A joint is one of the car file's joints: with a bore the angle between bolt and bore, each carried by its body; without, the angle by which a rod that is free to turn about itself leaves the plane square to its bolt.",
      'Best bolt: the direction, as the file gives bolt, with which the greatest tilt is least. Rated is the maker’s figure: makers publish more than one kind, so make sure which it is.',
    ],
    options: [AXLE, SETUPS_IN_USE, ...COMMON],
    examples: ['jounce joints samples/saltmarsh-hatch.jounce.json --setups Baseline,Sprint'],
  },
  {
    name: 'stroke',
    positional: 'CAR',
    takesCar: true,
    summary: 'what is left of damper, spring, bar, drive shaft, hoses and threads',
    details: [
      'Of the damper where the car stands: to the first touch of the bump rubber, to solid, to fully open. At which travel a spring comes loose or its coils touch. Over everything that each wheel can do: twist of the bar, plunge and angles of the drive shaft, the least and greatest distance that a hose has to bridge. Thread engagement of turnbuckles and studs as the setup leaves them.',
      'Travel counts from design. What the file does not say is left empty, with the reason.',
    ],
    options: [AXLE, SETUPS_IN_USE, ...COMMON],
    examples: ['jounce stroke samples/saltmarsh-hatch.jounce.json --setup Sprint --axle front'],
  },
  {
    name: 'loads',
    positional: 'CAR',
    takesCar: true,
    summary: 'what every link carries, for choosing a bearing or judging a bracket',
    details: [
      "Rigid links in balance at a position: the axial force of every rod, what every link puts on body and knuckle, the bending of what is bent, and how many times its push a straight bar takes. Cases are those of the car file's loads; a file without any is answered with five that are invented, and said to be.",
      'Forces of a case act at the contact centre; what a shaft drives acts at the wheel centre, since its torque does not go through the knuckle.',
    ],
    options: [
      { name: 'case', kind: 'text', value: 'NAME', help: 'this case only; all when not given' },
      {
        name: 'g',
        kind: 'pair',
        value: 'LAT,LONG',
        help: 'instead: a case by its accelerations in g, + to the left, + forward; the rule for the wheel loads is printed',
      },
      AXLE,
      TRAVEL,
      RACK,
      ROLL,
      ...COMMON,
    ],
    examples: [
      'jounce loads samples/saltmarsh-hatch.jounce.json --case Cornering --axle front',
      'jounce loads samples/saltmarsh-hatch.jounce.json --g -0.9,-0.4 --travel 15,-15',
    ],
  },
  {
    name: 'keep-out',
    positional: 'CAR OUT.stl',
    takesCar: true,
    second: 'out',
    writes: true,
    summary: 'the space that moving parts sweep, as a closed mesh to stay out of',
    details: [
      'Over everything that each wheel can do: travel from the damper fully open to solid, the rack from lock to lock, in the setups in use. The mesh is STL, binary, in mm, in the frame of the car: x forward, y left, z up.',
      'It holds all that is swept: its corners and the middles of its triangles are outside, by no more than the bound. Free space between what is swept can be filled where it is narrower than the gap that is printed, and a tyre is filled, its rim with it.',
      'For a duct or a hose grow by its radius and a margin: outside of the mesh is then where its centre line may run.',
    ],
    options: [
      { name: 'out', kind: 'text', value: 'OUT.stl', help: 'in place of the second word', writes: true },
      ...SWEPT,
      AXLE,
      { ...SIDE, help: 'the wheels of this side only; both when not given' },
      SETUPS_IN_USE,
      { name: 'force', kind: 'flag', value: '', help: 'lets it replace an existing file', writes: true },
      ...COMMON,
    ],
    examples: [
      'jounce keep-out samples/saltmarsh-hatch.jounce.json wheel.stl --of tyreFront \\\n    --side left --setups Baseline',
      'jounce keep-out samples/saltmarsh-hatch.jounce.json duct.stl --of tyreFront,caliperFront \\\n    --grow 43 --side left --setups Baseline',
    ],
  },
  {
    name: 'template',
    positional: 'CAR OUT',
    takesCar: true,
    second: 'out',
    writes: true,
    summary: 'the section of the space that parts sweep at true scale, on paper or for a cutter',
    details: [
      'OUT ends in .pdf or .dxf. The section of the keep-out with a plane, read from where its normal points: the car up, or its front where the plane lies flat. On it the pickup points at design with how far they are off the plane, the bolts of the joints, and where front, up and outboard are.',
      'PDF is in tiles that overlap by 10 mm, with crosses to lay on each other, and two bars of 100 mm on each: print at 100 % and measure both. DXF is of the twelfth release, a unit a millimetre.',
      'What the section holds reaches out past what is swept by no more than the bound.',
    ],
    options: [
      { name: 'out', kind: 'text', value: 'OUT', help: 'in place of the second word', writes: true },
      {
        name: 'plane',
        kind: 'text',
        value: 'PX,PY,PZ,NX,NY,NZ',
        help: 'a point on the plane in mm and its normal, car frame: 0,0,0,0,1,0 is the middle of the car seen from the left',
      },
      { name: 'paper', key: 'sheets', kind: 'choice', value: 'A4|A3|Letter|Tabloid', help: 'paper of a PDF; A4 when not given' },
      ...SWEPT,
      AXLE,
      { ...SIDE, value: 'left|right', help: 'the side of the car; left when not given' },
      SETUPS_IN_USE,
      { name: 'date', kind: 'text', value: 'YYYY-MM-DD', help: 'day of the template; today when not given' },
      { name: 'force', kind: 'flag', value: '', help: 'lets it replace an existing file', writes: true },
      ...COMMON,
    ],
    examples: [
      'jounce template samples/saltmarsh-hatch.jounce.json wheel.pdf --of tyreFront \\\n    --setups Baseline --plane 0,0,310,0,0,1',
    ],
  },
];
