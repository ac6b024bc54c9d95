import { addressingOf } from '../../analysis/addresses.ts';
import { firmwareOf } from '../../analysis/firmware.ts';
import { add } from '../../analysis/lists.ts';
import type { FirmwareState, Node, NodeAddress } from '../../analysis/model.ts';
import { type OutputSetting, outputSettingsIn } from '../../analysis/output-settings.ts';
import { socketsOf } from '../../analysis/ports.ts';
import { formatFormat, formatRaster, type StatedFormat } from '../../physics/raster.ts';
import { pictureText } from './pictures.ts';
import { type Cell, openBox, type Sheet, type SheetInput, type SheetRow, type SheetTable } from './sheet.ts';

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
      'One card a box, to be done in the workshop before the truck leaves. Tick what is set and stick on the labels.',
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
        note: from ? `from ${titles.socket(from)}` : 'off the network',
      }),
    ),
    ...labelItems(node),
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
      { title: 'What' },
      { title: 'Set to', kind: 'large' },
      { title: 'Note' },
    ],
    rows: items.map(
      ({ what, set, note = '' }): SheetRow => ({
        of: node.name,
        cells: [openBox, what, set, note] satisfies Cell[],
      }),
    ),
  };
}

interface Item {
  readonly what: string;
  readonly set: string;
  readonly note?: string;
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
      note: found === wanted ? 'found, nothing to do' : `found ${found}: UPDATE`,
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

function labelItems(node: Node): Item[] {
  const labelled = socketsOf(node).filter(({ label }) => label !== undefined);
  return labelled.map(({ kitPort, label }) => ({ what: `Label on ${kitPort.name}`, set: label! }));
}
