import type { WebGLRenderer } from 'three';

interface Printed {
  readonly gl: WebGLRenderer;
  readonly host: HTMLElement;
  readonly overlay: SVGSVGElement;
  /** of the view on the screen [px] */
  readonly width: number;
  readonly height: number;
}

const numbers = (list: string): number[] => (list === 'none' ? [] : list.split(/[ ,]+/).map((part) => Number.parseFloat(part)));

/** One path of the overlay, as its style has it. */
const drawPath = (pen: CanvasRenderingContext2D, path: SVGPathElement): void => {
  const d = path.getAttribute('d');
  if (!d) return;
  const style = getComputedStyle(path);
  const place = path.transform.baseVal.consolidate()?.matrix;
  pen.save();
  if (place) pen.translate(place.e, place.f);
  const shape = new Path2D(d);
  pen.globalAlpha = Number.parseFloat(style.opacity);
  if (style.fill !== 'none') {
    pen.fillStyle = style.fill;
    pen.globalAlpha *= Number.parseFloat(style.fillOpacity);
    pen.fill(shape);
  }
  if (style.stroke !== 'none') {
    pen.globalAlpha = Number.parseFloat(style.opacity) * Number.parseFloat(style.strokeOpacity);
    pen.strokeStyle = style.stroke;
    pen.lineWidth = Number.parseFloat(style.strokeWidth);
    pen.lineCap = style.strokeLinecap as CanvasLineCap;
    pen.setLineDash(numbers(style.strokeDasharray));
    pen.stroke(shape);
  }
  pen.restore();
};

const drawWords = (pen: CanvasRenderingContext2D, words: SVGTextElement): void => {
  if (!words.textContent) return;
  const style = getComputedStyle(words);
  pen.save();
  pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  pen.fontStretch = 'semi-condensed';
  pen.textAlign = 'center';
  pen.lineJoin = 'round';
  pen.strokeStyle = style.stroke;
  pen.lineWidth = Number.parseFloat(style.strokeWidth);
  pen.fillStyle = style.fill;
  const at = [Number(words.getAttribute('x')), Number(words.getAttribute('y'))] as const;
  if (style.stroke !== 'none') pen.strokeText(words.textContent, ...at);
  pen.fillText(words.textContent, ...at);
  pen.restore();
};

const FOOT = 22;
const WORDS = 12;

/** One line along the foot of the picture, on the colour of a panel; smaller where it would not fit. */
const drawFoot = (pen: CanvasRenderingContext2D, text: string, { host, width, height }: Printed): void => {
  const style = getComputedStyle(host);
  pen.save();
  pen.fillStyle = style.getPropertyValue('--panel').trim();
  pen.fillRect(0, height - FOOT, width, FOOT);
  pen.font = `550 ${WORDS}px ${style.fontFamily}`;
  const fits = Math.min(1, (width - 2 * WORDS) / Math.max(1, pen.measureText(text).width));
  pen.font = `550 ${WORDS * fits}px ${style.fontFamily}`;
  pen.textBaseline = 'middle';
  pen.fillStyle = style.getPropertyValue('--ink').trim();
  pen.fillText(text, WORDS, height - FOOT / 2);
  pen.restore();
};

/**
 * The picture as it stands on the screen, drawn anew so wide that it can be printed: solids, lines and words.
 * The visible canvas is lent for one frame and put back before the screen shows it.
 * @param wide - of the picture [px]
 * @param words - along its foot
 * @param setDensity - tells the hatching how fine a pixel is
 * @param frame - draws the scene into the canvas
 */
export const printPicture = async (
  printed: Printed,
  { wide, words }: { readonly wide: number; readonly words: string },
  setDensity: (density: number) => void,
  frame: () => void,
): Promise<Blob | null> => {
  const { gl, host, overlay, width, height } = printed;
  const before = gl.getPixelRatio();
  const scale = wide / Math.max(1, width);
  const sheet = document.createElement('canvas');
  sheet.width = Math.round(width * scale);
  sheet.height = Math.round(height * scale);
  const pen = sheet.getContext('2d');
  if (!pen) return null;
  const tokens = getComputedStyle(host);
  const ground = pen.createLinearGradient(0, 0, 0, sheet.height);
  ground.addColorStop(0, tokens.getPropertyValue('--plate-far').trim());
  ground.addColorStop(1, tokens.getPropertyValue('--plate-near').trim());
  pen.fillStyle = ground;
  pen.fillRect(0, 0, sheet.width, sheet.height);
  try {
    gl.setPixelRatio(scale);
    setDensity(scale);
    frame();
    pen.drawImage(gl.domElement, 0, 0, sheet.width, sheet.height);
  } finally {
    gl.setPixelRatio(before);
    setDensity(before);
    frame();
  }
  pen.scale(scale, scale);
  for (const view of overlay.querySelectorAll('svg')) {
    pen.save();
    pen.beginPath();
    const [x = 0, y = 0, w = width, h = height] = ['x', 'y', 'width', 'height'].map((name) => Number(view.getAttribute(name)));
    pen.rect(x, y, w, h);
    pen.clip();
    pen.translate(x, y);
    view.querySelectorAll('path').forEach((path) => drawPath(pen, path));
    view.querySelectorAll<SVGTextElement>('text.tag').forEach((text) => drawWords(pen, text));
    pen.restore();
  }
  drawFoot(pen, words, printed);
  return new Promise((resolve) => sheet.toBlob(resolve, 'image/png'));
};
