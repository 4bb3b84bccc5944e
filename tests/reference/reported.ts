/**
 * Shared cases that no function can satisfy together with the rest, with the reason. They are run and must go on failing: the day one is mended, this
 * list is to be shortened.
 */
export const reported: Readonly<Record<string, string>> = {
  'friction-factor-02':
    'asks the same function for the Colebrook factor with the very inputs for which friction-factor-01 asks for the Swamee-Jain one; the planner’s Colebrook factor is checked by itself',
};
