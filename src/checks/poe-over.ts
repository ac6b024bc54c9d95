import type { NetworkPower, NetworkSupply } from '../analysis/model.ts';
import { formatPower } from '../physics/display.ts';
import { poweringFor } from './asked.ts';
import type { Check, Report } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { linkSubject, listed, nodeText, shown } from './words.ts';

const cameras = (supplies: string) =>
  smallPlan(
    'kit switch_4 {',
    '  network net[1..4] as ethernet_1g_t',
    '  forwards',
    `  supplies poe ${supplies}`,
    '}',
    'kit remote_camera {',
    '  network net as ethernet_1g_t',
    '  carries compressed at 180 Mb/s',
    '  poe class 4',
    '}',
    'kit decoder {',
    '  network net as ethernet_1g_t',
    '  outputs out[1..2] as sdi_3g',
    '  carries compressed at 180 Mb/s',
    '}',
    'node hub : switch_4 at stage',
    ...[1, 2].flatMap((i) => [
      `node cam_${i} : remote_camera at stage`,
      `link cam_${i}.net <-> hub.net${i} over cat6a 10 m`,
      `source view_${i} from cam_${i}.net sends 1080p50`,
      `destination side_${i} at stage takes 1080p50 as sdi_3g from dec.out${i} over rg6 5 m`,
      `feed view_${i} -> side_${i}`,
    ]),
    'node dec : decoder at stage',
    'link hub.net4 <-> dec.net over cat6a 10 m',
  );

export const poeOver: Check = {
  name: 'poe-over',
  severity: 'error',
  when: 'idle',
  summary: 'A switch is to supply more power over its ports than it has.',
  explanation: `The switch gives power to the first devices that ask, and refuses the last: one camera stays dark, and after
the next power cut it is another.

**How it is judged.** What the switch sets aside for the class of each device (IEEE 802.3af, at, bt: 4, 7, 15.4, 30, 45,
60, 75, 90 W for classes 1 to 8; second-hand) against the port, and their sum against the switch. A device with a
circuit of its own takes none.

**What mends it.** A larger switch, a port that gives more, or a mains supply for some of the devices.`,
  examples: [{ wrong: cameras('30 W per port, 50 W in all'), right: cameras('30 W per port, 60 W in all') }],

  find(analysis, report) {
    for (const supply of poweringFor(analysis).network.supplies) {
      for (const power of supply.portsOver) report(portReport(power, supply));
      const { node, inAll_w, setAside_w, fed } = supply;
      if (inAll_w === undefined || setAside_w <= inAll_w) continue;
      report({
        statement: node.statement,
        part: 'name',
        subject: node.name,
        message: `${nodeText(node)} is to supply ${formatPower(setAside_w, inAll_w)} over the network and has ${formatPower(inAll_w)} in all (${listed(fed.map(({ device }) => device.name))}). Give some of them a mains supply, or use a larger switch.`,
      });
    }
  },
};

function portReport(
  { link, supply, device, poeClass, setAside_w }: NetworkPower,
  { perPort_w }: NetworkSupply,
): Report {
  return {
    statement: link.statement,
    part: link.named ? 'name' : undefined,
    subject: linkSubject(link),
    message: `${shown(device.name)} is of class ${poeClass} and wants ${formatPower(setAside_w, perPort_w)} from ${shown(supply.text)}, which gives ${formatPower(perPort_w)}. Use a port that gives more, or feed it from the mains.`,
  };
}
