import { useMedia } from '../look/useMedia';

/** Whether the window is as small as a screen at 200 %: its view has no height for the plan of the car. */
export const useShort = (): boolean => useMedia('(max-width: 999px) and (max-height: 460px)');

/** Whether two columns beside it leave the view no width for the plan: its wheels then stand in a strip under the view. */
export const useStrip = (): boolean => useMedia('(min-width: 1000px) and (max-width: 1139px)');
