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
  'text-anchor',
] as const;

const NAMESPACE = 'http://www.w3.org/2000/svg';
const HEAD = 40;
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
    ['x', '8'],
    ['y', String(y)],
    ['fill', colour],
    ['font-size', '12'],
    ['font-weight', weight],
  ] as const)
    text.setAttribute(name, value);
  return text;
};

/**
 * A drawn plot as an SVG file of its own: its colours written into it, its title and legend over it.
 * @param title - the reading with its unit, over which motion
 * @param legend - what the lines are
 */
export const plotSvg = (drawn: SVGSVGElement, title: string, legend: string): string => {
  const { width, height } = drawn.getBoundingClientRect();
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  styleAlike(drawn, copy);
  const ink = getComputedStyle(drawn).color;
  const paper = getComputedStyle(document.documentElement).getPropertyValue('--panel').trim();
  const whole = document.createElementNS(NAMESPACE, 'svg');
  const [w, h] = [Math.ceil(width), Math.ceil(height) + HEAD];
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
  body.setAttribute('transform', `translate(0 ${HEAD})`);
  body.append(...copy.childNodes);
  whole.append(ground, textAt(16, title, ink, '600'), textAt(33, legend, ink, '400'), body);
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
