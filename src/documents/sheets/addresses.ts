import { addressingOf } from '../../analysis/addresses.ts';
import { pictureCell } from './pictures.ts';
import { openBox, type Sheet, type SheetInput } from './sheet.ts';

/** Addresses of boxes, and the groups on which pictures ride. */
export function addressSheet({ analysis, titles }: SheetInput): Sheet {
  const { nodes, groups } = addressingOf(analysis);
  const { subnet, multicast, timingDomain } = analysis.settings.statement?.fact ?? {};
  return {
    id: 'addresses',
    title: 'Addresses',
    about: [
      subnet ? `Boxes: ${subnet}.` : '',
      multicast ? `Pictures: groups of ${multicast}.` : '',
      timingDomain === undefined ? '' : `Timing domain (PTP) ${timingDomain}.`,
    ]
      .filter(Boolean)
      .join(' '),
    empty: 'The plan states no addresses, and no prefix to take them from.',
    tables: [
      {
        file: 'addresses',
        caption: 'To set in the boxes',
        columns: [
          { title: 'Set', kind: 'tick' },
          { title: 'Box' },
          { title: 'Address', kind: 'strong' },
          { title: 'Stands at' },
        ],
        rows: nodes.map(({ node, address, stated }) => ({
          of: node.name,
          cells: [
            openBox,
            titles.of(node),
            { text: address ?? 'no place left', small: stated ? 'stated in the plan' : undefined },
            titles.place(node.place),
          ],
        })),
      },
      {
        file: 'groups',
        caption: 'Groups on which pictures ride (multicast)',
        columns: [
          { title: 'Picture' },
          { title: 'Group', kind: 'strong' },
          { title: 'Hardware address' },
          { title: 'Note' },
        ],
        rows: groups.map(({ source, group, hardwareAddress, flooded }) => ({
          of: source.name,
          cells: [
            pictureCell(source, titles),
            group ?? 'no place left',
            hardwareAddress ?? '',
            flooded ? 'switches send it everywhere' : '',
          ],
        })),
      },
    ],
  };
}
