import { z } from 'zod';
import { fieldState, forgetFieldDevice, newFieldCode, turnFieldOff, turnFieldOn } from '../field/field-control.ts';
import { act, ask, ctxOf, nothing } from '../procedure.ts';

export const field = {
  state: ask({ input: nothing, run: ({ program }) => fieldState(program) }),
  on: act({
    input: nothing,
    run(door) {
      // the farm that is open in this window stays the one that phones see
      const key = door.program.farms().find((each) => each.path === ctxOf(door).farm.path)?.key ?? door.farmKey;
      return turnFieldOn(door.program, door.program.places.pages, () => ctxOf({ ...door, farmKey: key }));
    },
  }),
  off: act({ input: nothing, run: ({ program }) => turnFieldOff(program) }),
  newCode: act({ input: nothing, run: ({ program }) => newFieldCode(program) }),
  forget: act({ input: z.object({ id: z.string().max(40) }), run: ({ program }, { id }) => forgetFieldDevice(program, id) }),
};
