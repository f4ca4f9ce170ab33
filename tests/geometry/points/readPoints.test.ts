import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MM_PER_POINT_UNIT, pointsCsv, readPoints } from '../../../geometry/index';

const points = (text: string) => readPoints(text).rows.map(({ name, read }) => [name, ...read]);

describe('a list of points', () => {
  test('commas, semicolons and tabs; decimal commas; with a header or without', () => {
    const wanted = [
      ['armFront', 8.75, 348.17, 195.48],
      ['armRear', -304.85, 363.67, 210.27],
    ];
    expect(points('armFront,8.75,348.17,195.48\narmRear,-304.85,363.67,210.27\n')).toEqual(wanted);
    expect(points('Point;X;Y;Z\r\narmFront;8,75;348,17;195,48\r\narmRear;−304,85;363,67;210,27')).toEqual(wanted);
    expect(points('\uFEFFarmFront\t8,75\t348,17\t195,48\rarmRear\t-304,85\t363,67\t210,27\r')).toEqual(wanted);
    expect(readPoints('a;1,5;2;3').decimal).toBe('comma');
    expect(readPoints('a;1.5;2;3')).toMatchObject({ decimal: 'point', separator: 'semicolon', header: false });
  });

  test('quoted fields hold separators, quotes and line ends; blank lines are nothing', () => {
    const list = readPoints('name,x,y,z\n\n"arm, ""front""",1,2,3\n  "two\nlines" , 4 , 5e1, .5\n');
    expect(list.rows.map(({ name, line }) => [name, line])).toEqual([
      ['arm, "front"', 3],
      ['two\nlines', 4],
    ]);
    expect(list.rows[1]?.read).toEqual([4, 50, 0.5]);
    expect(list.faults).toEqual([]);
  });

  test('a header names the columns in any order, their unit, axle and side', () => {
    // a letter for the side and the axle is how lists are written on the floor
    const letters = readPoints('axle,side,name,x,y,z\nF,L,hub,1,2,3\nr,RH,hub,1,2,3');
    expect(letters.rows.map(({ axle, side }) => [axle, side])).toEqual([['front', 'left'], ['rear', 'right']]); // prettier-ignore
    expect(readPoints('side,name,x,y,z\nX,hub,1,2,3').faults).toMatchObject([{ expected: '"left" or "right"' }]);
    const list = readPoints('side,z [in],point,y,x,remark\nRight,3,knuckle,2,1,bent\n,6,hub,5,4,\n');
    expect(list.headerUnit).toBe('in');
    expect(list.rows).toEqual([
      { line: 2, name: 'knuckle', read: [1, 2, 3], side: 'right' },
      { line: 3, name: 'hub', read: [4, 5, 6] },
    ]);
  });

  test('a header says where its coordinates point, in any words for it, or does not', () => {
    const axesOf = (head: string) => readPoints(`${head}\na,1,2,3`).headerAxes;
    const back = ['back', 'right', 'up'];
    expect(axesOf('Point,X back (in),Y right (in),Z up (in)')).toEqual(back);
    expect(axesOf('name,x (rearward),y [right],z (up)')).toEqual(back);
    expect(axesOf('name,x: aft,y: right,z: upwards')).toEqual(back);
    expect(axesOf('station,Back,Right,Up')).toEqual(back);
    expect(axesOf('name,x,y,z')).toBe(null);
    expect(axesOf('name,x back,y,z up')).toBe(null);
    expect(axesOf('name,x back,y forward,z up')).toBe(null);
    expect(axesOf('name,x back right,y right,z up')).toBe(null);
    expect(readPoints('a,1,2,3').headerAxes).toBe(null);
    // in another order, and with the unit beside it
    const list = readPoints('Z up (in);Y right (in);name;X back (in)\n3;2;a;1');
    expect(list).toMatchObject({ headerAxes: back, headerUnit: 'in', rows: [{ name: 'a', read: [1, 2, 3] }] });
    const both = readPoints('name;x (back, in);y (right, in);z (up, in)\na;1;2;3');
    expect(both).toMatchObject({ headerUnit: 'in', headerAxes: back });
  });

  test('coordinates in different units are one fault of the header', () => {
    const list = readPoints('name,x [in],y [mm],z [in]\na,1,2,3');
    expect(list.faults).toMatchObject([{ code: 'bad-points', line: 1, column: 13, found: '"y [mm]"' }]);
    expect(list.faults[0]?.expected).toContain('in');
    expect(list.faults[0]?.hint).toContain('convert');
    expect(readPoints('name,x [in],y,z (inch)\na,1,2,3')).toMatchObject({ faults: [], headerUnit: 'in' });
  });

  test('a point beside other design coordinates is posed', () => {
    const head = 'name,x [mm],y [mm],z [mm],design x [mm],design y [mm],design z [mm]\n';
    const list = readPoints(`${head}a,1,2,3,1,2,3\nb,1,2,3,1,2,3.5\nc,1,2,3,,,\n`);
    expect(list.rows.map(({ posed }) => posed)).toEqual([undefined, true, undefined]);
  });

  test('rows that cannot be read are faults with their places, and are not read in part', () => {
    const list = readPoints('a,1,2,3\nb,1,two,3\nc,1,2\n,1,2,3\nd,8,75,348,17,195,48\n"e,1,2,3');
    expect(list.rows.map(({ name }) => name)).toEqual(['a']);
    expect(list.faults.map(({ line, column, found }) => [line, column, found])).toEqual([
      [2, 5, '"two"'],
      [3, 1, '3 fields'],
      [4, 1, 'no name'],
      [5, 1, '7 fields'],
      [6, 1, 'a quote that is not closed'],
      [6, 1, '1 field'],
    ]);
    expect(list.faults[3]?.hint).toContain('decimal commas');
    expect(readPoints('a;1.5;2;3\nb;1,5;2;3').faults[0]).toMatchObject({
      line: 2,
      column: 3,
      hint: expect.stringContaining('decimal point'),
    });
    expect(readPoints('').faults).toHaveLength(1);
    expect(readPoints('name;x;y;z\n').faults).toHaveLength(1);
    expect(readPoints('a,1e999,0,0').faults[0]?.expected).toBe('a number for x');
    expect(readPoints('axle,name,x,y,z\nmiddle,a,1,2,3').faults[0]).toMatchObject({ line: 2, column: 1, found: '"middle"' });
  });

  test('what is written as CSV is read back to the last bit', () => {
    const number = fc.double({ min: -1e5, max: 1e5, noNaN: true });
    const point = fc.record({
      axle: fc.constantFrom('front' as const, 'rear' as const),
      side: fc.constantFrom('left' as const, 'right' as const),
      name: fc.stringMatching(/^[A-Za-z][A-Za-z0-9_-]{0,20}$/),
      at: fc.tuple(number, number, number),
      design: fc.tuple(number, number, number),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 1 }), (written) => {
        const list = readPoints(pointsCsv(written));
        expect(list.faults).toEqual([]);
        expect(list.headerUnit).toBe('mm');
        expect(list.rows.map(({ axle, side, name, read }) => ({ axle, side, name, read }))).toEqual(
          written.map(({ axle, side, name, at }) => ({ axle, side, name, read: at.map((v) => (v === 0 ? 0 : v)) })),
        );
      }),
      { seed: 4180 },
    );
  });

  test.each(['in', 'cm', 'm'] as const)('the same in %s: the head says it, and mm come back within a part in 10¹²', (unit) => {
    const at = [-304.85, 363.67, 210.27] as const;
    const written = [{ axle: 'front' as const, side: 'left' as const, name: 'armRear', at, design: at }];
    const list = readPoints(pointsCsv(written, unit));
    expect(list).toMatchObject({ headerUnit: unit, faults: [] });
    list.rows[0]?.read.forEach((value, axis) => expect(value * MM_PER_POINT_UNIT[unit]).toBeCloseTo(at[axis as 0 | 1 | 2], 9));
  });
});
