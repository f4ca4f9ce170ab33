export interface JsonWalk {
  /** A key of an object; `path` is the object's, valid during the call only. */
  readonly key?: (path: readonly (string | number)[], name: string, offset: number) => void;
  /** Start of any value; `path` is the value's own, valid during the call only. */
  readonly value?: (path: readonly (string | number)[], offset: number) => void;
  readonly objectBegin?: () => void;
  readonly objectEnd?: () => void;
}

const QUOTE = 0x22;
const COMMA = 0x2c;
const COLON = 0x3a;
const OPEN_LIST = 0x5b;
const BACKSLASH = 0x5c;
const CLOSE_LIST = 0x5d;
const OPEN_OBJECT = 0x7b;
const CLOSE_OBJECT = 0x7d;

const isBlank = (unit: number): boolean => unit === 0x20 || unit === 0x0a || unit === 0x0d || unit === 0x09;
const endsLiteral = (unit: number): boolean => unit === COMMA || unit === CLOSE_LIST || unit === CLOSE_OBJECT || isBlank(unit);

/** Offset after the text that begins at a quote. */
function endOfString(text: string, start: number): number {
  for (let end = text.indexOf('"', start + 1); end !== -1; end = text.indexOf('"', end + 1)) {
    let escapes = 0;
    while (text.charCodeAt(end - 1 - escapes) === BACKSLASH) escapes++;
    if (escapes % 2 === 0) return end + 1;
  }
  return text.length;
}

/**
 * Goes once through a JSON text in order, without building anything from it: time is that of reading it,
 * and memory does not grow with it. A parsed value knows neither places nor keys that were given twice.
 *
 * @param text - must have passed JSON.parse: only structure is looked at here
 */
export function walkJson(text: string, walk: JsonWalk): void {
  // while an object or list is open, the end of the path is the key or index that is next in it
  const path: (string | number)[] = [];
  const inList: boolean[] = [];
  let isKeyNext = false;
  const startValue = (offset: number): void => {
    if (inList[inList.length - 1] === true) path[path.length - 1] = (path[path.length - 1] as number) + 1;
    walk.value?.(path, offset);
  };
  let i = 0;
  while (i < text.length) {
    const unit = text.charCodeAt(i);
    switch (unit) {
      case OPEN_OBJECT:
      case OPEN_LIST:
        startValue(i);
        isKeyNext = unit === OPEN_OBJECT;
        if (isKeyNext) walk.objectBegin?.();
        inList.push(!isKeyNext);
        path.push(isKeyNext ? '' : -1);
        i++;
        break;
      case CLOSE_OBJECT:
      case CLOSE_LIST:
        inList.pop();
        path.pop();
        if (unit === CLOSE_OBJECT) walk.objectEnd?.();
        i++;
        break;
      case COMMA:
        isKeyNext = inList[inList.length - 1] === false;
        i++;
        break;
      case COLON:
        isKeyNext = false;
        i++;
        break;
      case QUOTE: {
        const end = endOfString(text, i);
        if (isKeyNext) {
          const name = JSON.parse(text.slice(i, end)) as string;
          path.pop();
          walk.key?.(path, name, i);
          path.push(name);
        } else startValue(i);
        i = end;
        break;
      }
      default:
        if (!isBlank(unit)) {
          startValue(i);
          while (i < text.length && !endsLiteral(text.charCodeAt(i))) i++;
        } else i++;
    }
  }
}
