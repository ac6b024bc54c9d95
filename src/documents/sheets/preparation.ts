import { addressingOf } from '../../analysis/addresses.ts';
import { firmwareOf } from '../../analysis/firmware.ts';
import { add } from '../../analysis/lists.ts';
import type { FirmwareState, Node, NodeAddress } from '../../analysis/model.ts';
import { type OutputSetting, outputSettingsIn } from '../../analysis/output-settings.ts';
import { socketsOf } from '../../analysis/ports.ts';
import { formatFormat, formatRaster, type StatedFormat } from '../../physics/raster.ts';
import { counted } from '../findings/located.ts';
import { pictureText } from './pictures.ts';
import { type Cell, type Sheet, type SheetInput, type SheetRow, type SheetTable, tickBox } from './sheet.ts';

/** What every box needs before the truck leaves. */
export function preparationSheet(input: SheetInput): Sheet {
  const { analysis } = input;
  const firmware = new Map(firmwareOf(analysis).states.map((state) => [state.node, state]));
  const addresses = new Map(addressingOf(analysis).nodes.map((one) => [one.node, one]));
  const settings = new Map<Node, OutputSetting[]>();
  for (const setting of outputSettingsIn(analysis, analysis.situations[0]!))
    add(settings, setting.node, setting);
  const prepared = [...analysis.nodes.values()].map((node) =>
    card(
      node,
      { firmware: firmware.get(node), address: addresses.get(node), settings: settings.get(node) ?? [] },
      input,
    ),
  );
  return {
    id: 'prepare',
    title: 'Preparation',
    about:
      'One card a box, to be done in the workshop before the truck leaves. Tick what is set and stuck on. Where a socket has no name of its own, its label says what is plugged in there.',
    empty: 'No box of this plan needs anything set.',
    cards: true,
    tables: prepared.filter(({ rows }) => rows.length > 0),
  };
}

interface Wanted {
  readonly firmware: FirmwareState | undefined;
  readonly address: NodeAddress | undefined;
  readonly settings: readonly OutputSetting[];
}

function card(node: Node, wanted: Wanted, input: SheetInput): SheetTable {
  const { titles, analysis } = input;
  const timing = analysis.settings.statement?.fact.timingDomain;
  const items: Item[] = [
    ...firmwareItem(wanted.firmware),
    ...addressItem(wanted.address),
    ...(wanted.address && timing !== undefined ? [{ what: 'Timing domain (PTP)', set: String(timing) }] : []),
    ...(node.kit?.carries ? [{ what: 'Carry pictures', set: node.kit.carries.text }] : []),
    ...givenItems(node),
    ...wanted.settings.map(
      ({ output, shows, input: from }): Item => ({
        what: `${titles.socket(output)} shows`,
        set: pictureText(shows, titles),
        note: from ? `from ${titles.socket(from)}` : 'taken off the network',
      }),
    ),
    ...labelItem(node, titles),
  ];
  return {
    file: 'preparation',
    group: {
      heading: 'Box',
      title: titles.of(node),
      subtitle: [node.kit?.statement.label ?? node.kit?.name, `goes to ${titles.place(node.place)}`]
        .filter(Boolean)
        .join(', '),
    },
    columns: [
      { title: 'Done', kind: 'tick' },
      { title: 'What', percent: 20 },
      { title: 'Set to', kind: 'strong' },
      { title: 'Note', percent: 24 },
    ],
    rows: items.map(
      ({ what, set, note = '', done = false }): SheetRow => ({
        of: node.name,
        cells: [tickBox(done), what, set, note] satisfies Cell[],
      }),
    ),
  };
}

interface Item {
  readonly what: string;
  readonly set: Cell;
  readonly note?: string;
  readonly done?: boolean;
}

function firmwareItem(state: FirmwareState | undefined): Item[] {
  if (!state) return [];
  const { wanted, found } = state;
  if (wanted === undefined)
    return [{ what: 'Firmware', set: found!, note: 'found; the plan wants none in particular' }];
  if (found === undefined) return [{ what: 'Firmware', set: wanted, note: 'look which version is in it' }];
  return [
    {
      what: 'Firmware',
      set: wanted,
      note: found === wanted ? `found ${found}: as wanted` : `found ${found}: UPDATE`,
      done: found === wanted,
    },
  ];
}

function addressItem(one: NodeAddress | undefined): Item[] {
  if (!one) return [];
  const shared = one.sharedWith.length > 0 ? ' ALSO GIVEN TO ANOTHER BOX' : '';
  return [{ what: 'Address', set: one.address ?? 'no place left in the prefix', note: shared.trim() }];
}

/** Outputs that are set to a format. */
function givenItems(node: Node): Item[] {
  return socketsOf(node).flatMap(({ kitPort, port }) => {
    const gives = port?.gives ?? kitPort.gives;
    return gives && port ? [{ what: `${kitPort.name} gives`, set: statedText(gives) }] : [];
  });
}

/** As it was stated: what was left out follows from what is plugged in. */
function statedText(format: StatedFormat): string {
  if (format.kind === 'sound') return formatFormat(format);
  const { sampling, depth_bits } = format;
  return [formatRaster(format), sampling, depth_bits === undefined ? '' : `${depth_bits} bit`]
    .filter(Boolean)
    .join(' ');
}

/** The label of every socket that is used or has a name of its own, as the label sheets print them. */
function labelItem(node: Node, titles: SheetInput['titles']): Item[] {
  const labels = socketsOf(node).flatMap(({ kitPort, label, port }) => {
    const link = port?.links[0];
    const other = link && (link.from.port === port ? link.to : link.from);
    const words = label ?? (other && titles.end(other));
    return words === undefined ? [] : [`${kitPort.name}: ${words}`];
  });
  if (labels.length === 0) return [];
  return [{ what: 'Labels', set: { text: counted(labels.length, 'label'), small: labels.join('; ') } }];
}
