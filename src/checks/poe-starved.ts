import type { NetworkPower } from '../analysis/model.ts';
import { formatPower } from '../physics/display.ts';
import { poweringFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { lengthText, linkSubject, shown } from './words.ts';

const camera = (draws: number) =>
  smallPlan(
    'kit switch_4 {',
    '  network net[1..4] as ethernet_1g_t',
    '  forwards',
    '  supplies poe 30 W per port',
    '}',
    'kit remote_camera {',
    '  network net as ethernet_1g_t',
    '  carries compressed at 180 Mb/s',
    '  poe class 3',
    `  draws ${draws} W`,
    '}',
    'kit decoder {',
    '  network net as ethernet_1g_t',
    '  outputs out1 as sdi_3g',
    '  carries compressed at 180 Mb/s',
    '}',
    'node hub : switch_4 at stage',
    'node cam : remote_camera at stage',
    'node dec : decoder at stage',
    'link cam.net <-> hub.net1 over cat6a 10 m',
    'link hub.net4 <-> dec.net over cat6a 10 m',
    'source view from cam.net sends 1080p50',
    'destination side at stage takes 1080p50 as sdi_3g from dec.out1 over rg6 5 m',
    'feed view -> side',
  );

export const poeStarved: Check = {
  name: 'poe-starved',
  severity: 'error',
  when: 'idle',
  summary: 'A device gets less power over the network than it draws.',
  explanation: `The device starts and falls down again when its heater, its motor or its light comes on.

**How it is judged.** A device may draw what its class allows (IEEE 802.3af, at, bt: 3.84, 6.49, 12.95, 25.5, 40, 51, 62,
71.3 W for classes 1 to 8; second-hand), and what arrives at the far end of the cable: the supply's least voltage less
the drop over the loop resistance of the channel (scaled with its length, from memory).

**What mends it.** A higher class at both ends, a shorter or thicker cable, or a mains supply.`,
  examples: [{ wrong: camera(20), right: camera(12) }],

  find(analysis, report) {
    for (const power of poweringFor(analysis).network.powers) {
      const { link, device, draws_w, allowed_w, poeClass } = power;
      const at = {
        statement: link.statement,
        part: link.named ? 'name' : undefined,
        subject: linkSubject(link),
      };
      if (draws_w !== undefined && draws_w > allowed_w) {
        report({
          ...at,
          message: `${shown(device.name)} draws ${formatPower(draws_w, allowed_w)}, and class ${poeClass} allows ${formatPower(allowed_w)} at the device. Use a higher class, or feed it from the mains.`,
        });
      } else if (isTooFar(power)) {
        const length = lengthText(analysis, link.length.length_m ?? 0);
        report({
          ...at,
          message: `${shown(device.name)} does not get its ${formatPower(power.device_w)} over ${length} of ${shown(link.cable?.name ?? 'cable')}: too much is lost on the way. Use a shorter or thicker cable, or feed it from the mains.`,
        });
      }
    }
  },
};

function isTooFar({ supply_w, link }: NetworkPower): boolean {
  return supply_w === undefined && link.length.length_m !== undefined;
}
