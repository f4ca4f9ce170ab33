import { visit } from 'jsonc-parser';

export interface JsonWalk {
  /** A key of an object; `path` is the object's, valid during the call only. */
  readonly key?: (path: readonly (string | number)[], name: string, offset: number) => void;
  /** Start of any value; `path` is the value's own, valid during the call only. */
  readonly value?: (path: readonly (string | number)[], offset: number) => void;
  readonly objectBegin?: () => void;
  readonly objectEnd?: () => void;
}

/**
 * Goes once through a JSON text in order, without building anything from it: memory does not grow with the text.
 * The text must have passed JSON.parse and the limit on nesting; a text that has not is walked as far as it makes sense.
 */
export function walkJson(text: string, walk: JsonWalk): void {
  const path: (string | number)[] = [];
  const inArray: boolean[] = [];
  // an array's next index stands at the end of the path while the array is open; an object's key does so too
  const startValue = (offset: number): void => {
    if (inArray[inArray.length - 1] === true) path[path.length - 1] = (path[path.length - 1] as number) + 1;
    walk.value?.(path, offset);
  };
  visit(text, {
    onObjectBegin: (offset) => {
      startValue(offset);
      walk.objectBegin?.();
      inArray.push(false);
      path.push('');
    },
    onObjectProperty: (name, offset) => {
      path.pop();
      walk.key?.(path, name, offset);
      path.push(name);
    },
    onObjectEnd: () => {
      inArray.pop();
      path.pop();
      walk.objectEnd?.();
    },
    onArrayBegin: (offset) => {
      startValue(offset);
      inArray.push(true);
      path.push(-1);
    },
    onArrayEnd: () => {
      inArray.pop();
      path.pop();
    },
    onLiteralValue: (_value, offset) => {
      startValue(offset);
    },
  });
}
