/** Where an STL file is kept that was dropped on another page, until the form that makes parts of them takes it. */
export const GIVEN_MESH = 'points.parts.given';
