import { linesThatFit } from './linesThatFit';

const PROPERTIES = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'font-size',
  'font-weight',
  'font-stretch',
  'text-anchor',
] as const;

const NAMESPACE = 'http://www.w3.org/2000/svg';
const LINE = 17;
const ASIDE = 8;
const SIZE = 12;
/** Text stays readable where the program's own fonts are not. */
const FONTS = "'Encode Sans', 'Helvetica Neue', Arial, sans-serif";

const styleAlike = (drawn: Element, copy: Element): void => {
  const style = getComputedStyle(drawn);
  for (const property of PROPERTIES) {
    const value = style.getPropertyValue(property);
    if (value !== '') copy.setAttribute(property, value);
  }
  copy.removeAttribute('class');
  [...drawn.children].forEach((child, index) => {
    const twin = copy.children[index];
    if (twin) styleAlike(child, twin);
  });
};

const textAt = (y: number, words: string, colour: string, weight: string): SVGTextElement => {
  const text = document.createElementNS(NAMESPACE, 'text');
  text.textContent = words;
  for (const [name, value] of [
    ['x', String(ASIDE)],
    ['y', String(y)],
    ['fill', colour],
    ['font-size', String(SIZE)],
    ['font-weight', weight],
  ] as const)
    text.setAttribute(name, value);
  return text;
};

/** Whether a text stands in a width of the picture, in the widest of the typefaces that it may be shown in. */
const fitsIn = (width: number, weight: string): ((text: string) => boolean) => {
  const pen = document.createElement('canvas').getContext('2d');
  return (text) => {
    if (!pen) return true;
    const widths = FONTS.split(',').map((family) => {
      pen.font = `${weight} ${SIZE}px ${family}`;
      return pen.measureText(text).width;
    });
    return Math.max(...widths) <= width - 2 * ASIDE;
  };
};

/**
 * A drawn plot as an SVG file of its own: its colours written into it, its title and legend over it.
 * @param title - the reading with its unit, over which motion
 * @param legend - what the lines are, part by part
 */
export const plotSvg = (drawn: SVGSVGElement, title: string, legend: readonly string[]): string => {
  const { width, height } = drawn.getBoundingClientRect();
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  styleAlike(drawn, copy);
  const ink = getComputedStyle(drawn).color;
  const paper = getComputedStyle(document.documentElement).getPropertyValue('--panel').trim();
  const whole = document.createElementNS(NAMESPACE, 'svg');
  const w = Math.ceil(width);
  const head = [
    ...linesThatFit([title], fitsIn(w, '600')).map((words) => ({ words, weight: '600' })),
    ...linesThatFit(legend, fitsIn(w, '400')).map((words) => ({ words, weight: '400' })),
  ];
  const top = LINE * head.length + 6;
  const h = Math.ceil(height) + top;
  for (const [name, value] of [
    ['xmlns', NAMESPACE],
    ['width', String(w)],
    ['height', String(h)],
    ['viewBox', `0 0 ${w} ${h}`],
    ['font-family', FONTS],
  ] as const)
    whole.setAttribute(name, value);
  const ground = document.createElementNS(NAMESPACE, 'rect');
  ground.setAttribute('width', '100%');
  ground.setAttribute('height', '100%');
  ground.setAttribute('fill', paper);
  const body = document.createElementNS(NAMESPACE, 'g');
  body.setAttribute('transform', `translate(0 ${top})`);
  body.append(...copy.childNodes);
  whole.append(ground, ...head.map(({ words, weight }, index) => textAt(LINE * (index + 1) - 1, words, ink, weight)), body);
  return new XMLSerializer().serializeToString(whole);
};

/** The same as a PNG of `scale` times its size; null where the browser cannot draw it. */
export const plotPng = async (svg: string, scale: number): Promise<Blob | null> => {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(image.naturalWidth * scale);
  canvas.height = Math.round(image.naturalHeight * scale);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));
};
