/** The channels between the window and Electron's main process: one for each method of the file contract. */
export const LIST_SAMPLES = 'files:listSamples';
export const READ_SAMPLE = 'files:readSample';
