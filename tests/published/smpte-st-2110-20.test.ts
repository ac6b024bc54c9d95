import { MOST_ROW_HEADERS, SAMPLE_ROOM_OCTETS, UDP_LIMIT_OCTETS } from '../../src/physics/packet-headers.ts';
import { BLOCK_OCTETS, packFrame, packFullest } from '../../src/physics/packing.ts';
import { picture } from './pictures.ts';
import { published } from './source.ts';

published({ source: 'SMPTE ST 2110-10 §6.3-6.4, size limit', label: 'second-hand' }, [
  { what: 'UDP header and all RTP data, octets', got: () => UDP_LIMIT_OCTETS, expected: 1460 },
  { what: 'room for samples behind one row header, octets', got: () => SAMPLE_ROOM_OCTETS, expected: 1432 },
]);

published({ source: 'SMPTE ST 2110-20 §6.2-6.3, packing', label: 'second-hand' }, [
  { what: 'block packing: octets of a full packet', got: () => BLOCK_OCTETS, expected: 1260 },
  { what: 'row headers in a packet, at most', got: () => MOST_ROW_HEADERS, expected: 3 },
  {
    id: 'W1.3',
    what: '1920x1080 progressive, block packing: packets a frame',
    got: () => packFrame(picture('1080p59.94'), 'block').packets,
    expected: 4115,
  },
  {
    what: '1080p25, block packing: packets a frame, reported independently',
    got: () => packFrame(picture('1080p25'), 'block').packets,
    expected: 4115,
  },
  {
    id: 'W1.4',
    what: '1920x1080 interlaced, block packing: packets a frame, fields sharing none',
    got: () => packFrame(picture('1080i59.94'), 'block').packets,
    expected: 4116,
  },
  {
    what: '2160p60, equal packets: packets a second (published 1,036,830)',
    got: () => packFrame(picture('2160p60'), 'equal').packets * 60,
    expected: 1_036_830,
    percent: 0.01,
  },
]);

published(
  {
    source: 'an open ST 2110 library, github.com/OpenVisualCloud/Media-Transport-Library st_fmt.c',
    label: 'published',
  },
  [
    {
      what: '1080p59.94: packets a frame',
      got: () => packFrame(picture('1080p59.94'), 'equal').packets,
      expected: 4320,
    },
    {
      id: 'W1.11',
      what: '720p59.94 in 1800 packets of 2 x 256 pixels: no packing has fewer packets than the fullest',
      got: () => {
        const { width, height } = picture('720p59.94');
        const packets = (width * height) / (2 * 256);
        return packets >= packFullest(picture('720p59.94')).packets ? packets : 'fewer than the fullest';
      },
      expected: 1800,
    },
  ],
);
