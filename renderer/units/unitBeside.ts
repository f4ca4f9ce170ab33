/** A unit as it stands right behind a name: "Toe in" would be another word, so inches are written out behind toe. */
export const unitBeside = (name: string, unit: string): string => (unit === 'in' && /\btoe$/i.test(name) ? 'inches' : unit);
