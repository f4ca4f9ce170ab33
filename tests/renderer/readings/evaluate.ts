/** A number or a vector. */
type Value = number | readonly number[];

const DEGREE = Math.PI / 180;

const FUNCTIONS: Readonly<Record<string, (...values: number[]) => number>> = {
  asin: (value = NaN) => Math.asin(value) / DEGREE,
  atan2: (y = NaN, x = NaN) => Math.atan2(y, x) / DEGREE,
  acot: (value = NaN) => Math.atan2(1, value) / DEGREE,
  sin: (value = NaN) => Math.sin(value * DEGREE),
  cos: (value = NaN) => Math.cos(value * DEGREE),
  cot: (value = NaN) => 1 / Math.tan(value * DEGREE),
};

const TOKEN = /\s*(\d+°\d+(?:\.\d+)?′|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|[a-z]+[0-9]?|[−+·×/()|√²³π;]|,)/uy;

/** A number as it is printed: "−1,234.5", or degrees and minutes, "−1°28.5′". */
export const printedNumber = (text: string): number => {
  const [, sign, degrees, minutes] = /^(−?)(\d+)°([\d.]+)′$/.exec(text) ?? [];
  const number =
    degrees === undefined
      ? Number(text.replaceAll(',', '').replace('−', '-'))
      : (sign === '−' ? -1 : 1) * (Number(degrees) + Number(minutes) / 60);
  if (Number.isNaN(number)) throw new Error(`${text} is no number`);
  return number;
};

/** One unit of the last decimal that is printed. */
export const grainOf = (text: string): number => {
  const decimals = /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
  return Number(`1e-${decimals}`) / (text.endsWith('′') ? 60 : 1);
};

const tokensOf = (text: string): string[] => {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.trimEnd().length) {
    const found = TOKEN.exec(text);
    if (!found?.[1]) throw new Error(`cannot read ${text}`);
    tokens.push(found[1]);
  }
  return tokens;
};

const numberOf = (value: Value): number => {
  if (typeof value !== 'number') throw new Error('a vector where a number belongs');
  return value;
};
const each = (a: Value, b: Value, what: (one: number, two: number) => number): Value => {
  if (typeof a === 'number' && typeof b === 'number') return what(a, b);
  if (typeof a === 'number' || typeof b === 'number' || a.length !== b.length) throw new Error('a number added to a vector');
  return a.map((one, index) => what(one, b[index] ?? NaN));
};
const product = (a: Value, b: Value): Value => {
  if (typeof a === 'number' && typeof b === 'number') return a * b;
  if (typeof a === 'number') return (b as readonly number[]).map((one) => a * one);
  if (typeof b === 'number') return a.map((one) => one * b);
  return a.reduce((sum, one, index) => sum + one * (b[index] ?? NaN), 0);
};
const crossed = (a: Value, b: Value): Value => {
  const [[ax = NaN, ay = NaN, az = NaN], [bx = NaN, by = NaN, bz = NaN]] = [a as number[], b as number[]];
  return [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];
};

/**
 * What a written formula makes: true minus, commas between thousands, angles in degrees, (1; 2; 3) a vector, · between two
 * vectors their scalar product, × their vector product, |…| the size; 1°30′ is 1.5.
 */
export const evaluate = (text: string): Value => {
  const tokens = tokensOf(text);
  let at = 0;
  const peek = (): string | undefined => tokens[at];
  const take = (wanted?: string): string => {
    const token = tokens[at];
    if (token === undefined || (wanted !== undefined && token !== wanted))
      throw new Error(`${wanted ?? 'more'} is missing in ${text}`);
    at += 1;
    return token;
  };
  const primary = (): Value => {
    const token = take();
    if (token === '(') {
      const first = sum();
      if (peek() !== ';') {
        take(')');
        return first;
      }
      const parts = [numberOf(first)];
      while (peek() === ';') {
        take();
        parts.push(numberOf(sum()));
      }
      take(')');
      return parts;
    }
    if (token === '|') {
      const inside = sum();
      take('|');
      return typeof inside === 'number' ? Math.abs(inside) : Math.sqrt(numberOf(product(inside, inside)));
    }
    if (token === 'π') return Math.PI;
    const named = FUNCTIONS[token];
    if (named) {
      take('(');
      const values = [numberOf(sum())];
      while (peek() === ',') {
        take();
        values.push(numberOf(sum()));
      }
      take(')');
      return named(...values);
    }
    return printedNumber(token);
  };
  const power = (): Value => {
    let value = primary();
    while (peek() === '²' || peek() === '³') value = numberOf(value) ** (take() === '²' ? 2 : 3);
    return value;
  };
  const signed = (): Value => {
    if (peek() === '−') {
      take();
      return product(-1, signed());
    }
    if (peek() === '√') {
      take();
      return Math.sqrt(numberOf(power()));
    }
    return power();
  };
  const factor = (): Value => {
    let value = signed();
    while (peek() === '·' || peek() === '×' || peek() === '/') {
      const sign = take();
      const next = signed();
      value = sign === '×' ? crossed(value, next) : sign === '·' ? product(value, next) : product(value, 1 / numberOf(next));
    }
    return value;
  };
  const sum = (): Value => {
    let value = factor();
    while (peek() === '+' || peek() === '−')
      value = each(value, take() === '+' ? product(1, factor()) : product(-1, factor()), (a, b) => a + b);
    return value;
  };
  const value = sum();
  if (at !== tokens.length) throw new Error(`${tokens.slice(at).join(' ')} is left over in ${text}`);
  return value;
};
