/** The channels between the window and Electron's main process. */
export const LIST_SAMPLES = 'files:listSamples';
export const READ_SAMPLE = 'files:readSample';
/** Every other question of the contract: its method's name and what is asked. */
export const QUESTION = 'files:question';
/** From the preload script alone: the path of a file that was dropped on the window. */
export const HAND_DROPPED = 'files:handDropped';
/** To the window: a file that the system opened, and what a native menu asks for. */
export const HANDED = 'files:handed';
export const ASKED = 'files:asked';
