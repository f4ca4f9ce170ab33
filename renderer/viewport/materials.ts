import { Color, DoubleSide, ShaderMaterial, Vector3 } from 'three';

/** What a part is made of, for the eye. `blued` is the part under the hand. */
export type Finish = 'steel' | 'cast' | 'zinc' | 'rubber' | 'alloy' | 'body' | 'blued';
export const FINISHES: readonly Finish[] = ['steel', 'cast', 'zinc', 'rubber', 'alloy', 'body', 'blued'];

/** Key light over the right shoulder, in the eye's frame. */
const KEY_LIGHT = new Vector3(0.42, 0.62, 0.66).normalize();

const MATTE_VERTEX = `
varying vec3 vNormal;
varying vec3 vView;
void main() {
  vec4 seen = modelViewMatrix * vec4(position, 1.0);
  vNormal = normalMatrix * normal;
  vView = seen.xyz;
  gl_Position = projectionMatrix * seen;
}`;

const MATTE_FRAGMENT = `
uniform vec3 lo;
uniform vec3 hi;
uniform vec3 key;
varying vec3 vNormal;
varying vec3 vView;
void main() {
  vec3 n = normalize(vNormal) * (gl_FrontFacing ? 1.0 : -1.0);
  float facing = abs(dot(n, normalize(-vView)));
  float lit = max(dot(n, key), 0.0);
  float sky = 0.5 + 0.5 * n.y;
  float tone = 0.10 + 0.62 * lit + 0.30 * sky - 0.22 * pow(1.0 - facing, 2.5);
  gl_FragColor = vec4(mix(lo, hi, clamp(tone, 0.0, 1.0)), 1.0);
}`;

const buildMatte = (): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: { lo: { value: new Color() }, hi: { value: new Color() }, key: { value: KEY_LIGHT } },
    vertexShader: MATTE_VERTEX,
    fragmentShader: MATTE_FRAGMENT,
    side: DoubleSide,
  });

/** The edge of a cut face. */
const buildEdge = (): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: { ink: { value: new Color() } },
    vertexShader: 'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: 'uniform vec3 ink; void main() { gl_FragColor = vec4(ink, 1.0); }',
    side: DoubleSide,
  });

/** A cut face: card with ink lines at 45° that keep their width on the screen. */
const buildHatched = (): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: { face: { value: new Color() }, line: { value: new Color() }, density: { value: 1 } },
    vertexShader: 'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: `
uniform vec3 face;
uniform vec3 line;
uniform float density;
void main() {
  float across = abs(mod((gl_FragCoord.x + gl_FragCoord.y) / density, 7.0) - 3.5) / 1.414;
  gl_FragColor = vec4(mix(line, face, smoothstep(0.25, 0.95, across)), 1.0);
}`,
    side: DoubleSide,
  });

/** The ground: a surface plate with its edge, a line every 100 mm and a heavier one at the car's middle and every 500 mm. */
const buildPlate = (): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: {
      near: { value: new Color() },
      fine: { value: new Color() },
      edge: { value: new Color() },
      halfSize: { value: new Vector3() },
      origin: { value: new Vector3() },
    },
    vertexShader: `
varying vec2 vPlace;
varying vec2 vOnPlate;
uniform vec3 origin;
void main() {
  vOnPlate = position.xy;
  vPlace = position.xy + origin.xy;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`,
    fragmentShader: `
uniform vec3 near;
uniform vec3 fine;
uniform vec3 edge;
uniform vec3 halfSize;
varying vec2 vPlace;
varying vec2 vOnPlate;
float lines(vec2 place, float pitch, float width) {
  vec2 cell = place / pitch;
  vec2 wide = fwidth(cell);
  vec2 off = abs(fract(cell - 0.5) - 0.5) / max(wide, vec2(1e-6));
  vec2 ink = 1.0 - smoothstep(vec2(width - 0.5), vec2(width + 0.5), off);
  return max(ink.x * (1.0 - smoothstep(0.2, 0.5, wide.x)), ink.y * (1.0 - smoothstep(0.2, 0.5, wide.y)));
}
void main() {
  float middle = 1.0 - smoothstep(0.8, 1.8, abs(vPlace.y) / max(fwidth(vPlace.y), 1e-6));
  float ink = max(max(0.6 * lines(vPlace, 100.0, 0.5), lines(vPlace, 500.0, 0.9)), middle);
  vec2 inward = (halfSize.xy - abs(vOnPlate)) / max(fwidth(vOnPlate), vec2(1e-6));
  float rim = 1.0 - smoothstep(0.9, 1.9, min(inward.x, inward.y));
  gl_FragColor = vec4(mix(mix(near, fine, ink), edge, 0.5 * rim), 1.0);
}`,
    side: DoubleSide,
  });

/** The soft shade under a wheel. */
const buildShade = (): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: { strength: { value: 0.2 } },
    vertexShader: `
varying vec2 vAt;
void main() { vAt = uv * 2.0 - 1.0; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }`,
    fragmentShader: `
uniform float strength;
varying vec2 vAt;
void main() { float far = length(vAt); gl_FragColor = vec4(0.0, 0.0, 0.0, strength * (1.0 - smoothstep(0.15, 1.0, far))); }`,
    transparent: true,
    depthWrite: false,
    polygonOffset: true,
    polygonOffsetFactor: -2,
    polygonOffsetUnits: -2,
  });

export interface Materials {
  readonly finish: Readonly<Record<Finish, ShaderMaterial>>;
  readonly hatched: ShaderMaterial;
  readonly edge: ShaderMaterial;
  readonly plate: ShaderMaterial;
  readonly shade: ShaderMaterial;
  /** Takes the colours of the theme in force from the page's tokens. */
  readonly readTokens: () => void;
  /** How many pixels of the canvas are one of the screen: hatching keeps its pitch. */
  readonly setDensity: (density: number) => void;
  readonly dispose: () => void;
}

/** The six digits of a colour; the built style sheet shortens #ffffff to #fff. */
export const hexDigits = (written: string): string | undefined => {
  const digits = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i.exec(written.trim())?.[1];
  return digits?.length === 3 ? digits.replace(/./g, '$&$&') : digits;
};

/** Token colours are written in the colours of the screen and go to it as they are. */
const setToken = (color: unknown, styles: CSSStyleDeclaration, token: string): void => {
  if (!(color instanceof Color)) return;
  const hex = hexDigits(styles.getPropertyValue(token));
  if (hex === undefined) throw new Error(`${token} is not a colour of the picture: ${styles.getPropertyValue(token)}`);
  const value = Number.parseInt(hex, 16);
  color.r = ((value >> 16) & 255) / 255;
  color.g = ((value >> 8) & 255) / 255;
  color.b = (value & 255) / 255;
};

/** The few materials that everything in the view shares. */
export const buildMaterials = (): Materials => {
  const finish = Object.fromEntries(FINISHES.map((name) => [name, buildMatte()])) as Record<Finish, ShaderMaterial>;
  const [hatched, edge, plate, shade] = [buildHatched(), buildEdge(), buildPlate(), buildShade()];
  const setDensity = (density: number): void => {
    const uniform = hatched.uniforms['density'];
    if (uniform) uniform.value = density;
  };
  const all = [...Object.values(finish), hatched, edge, plate, shade];
  return {
    finish,
    hatched,
    edge,
    plate,
    shade,
    readTokens: () => {
      const styles = getComputedStyle(document.documentElement);
      for (const name of FINISHES) {
        setToken(finish[name].uniforms['lo']?.value, styles, `--m-${name}-lo`);
        setToken(finish[name].uniforms['hi']?.value, styles, `--m-${name}-hi`);
      }
      setToken(hatched.uniforms['face']?.value, styles, '--card');
      setToken(hatched.uniforms['line']?.value, styles, '--ink-2');
      setToken(edge.uniforms['ink']?.value, styles, '--ink');
      setToken(plate.uniforms['edge']?.value, styles, '--ink-3');
      setToken(plate.uniforms['near']?.value, styles, '--plate-near');
      setToken(plate.uniforms['fine']?.value, styles, '--scribe');
      setDensity(Math.min(2, window.devicePixelRatio));
    },
    setDensity,
    dispose: () => all.forEach((material) => material.dispose()),
  };
};
