import {
  formatAddress,
  GROUPS_PER_HARDWARE_ADDRESS,
  groupLowBits,
  groupMembership_s,
  hardwareAddress,
  isAdministrativelyScoped,
  isFlooded,
  isMulticast,
  parseAddress,
  shareHardwareAddress,
} from '../../src/physics/addresses.ts';
import { published } from './source.ts';

const group = parseAddress;

published({ source: 'RFC 1112 §6.4, hardware address of a group', label: 'published' }, [
  {
    id: 'W10.1',
    what: 'groups that share a hardware address',
    got: () => GROUPS_PER_HARDWARE_ADDRESS,
    expected: 32,
  },
  {
    id: 'W10.2',
    what: '239.129.1.1: low bits',
    got: () => groupLowBits(group('239.129.1.1')),
    expected: 65_793,
  },
  {
    what: '239.129.1.1: hardware address',
    got: () => hardwareAddress(group('239.129.1.1')),
    expected: '01-00-5E-01-01-01',
  },
  {
    what: '239.1.1.1 shares it',
    got: () => shareHardwareAddress(group('239.1.1.1'), group('239.129.1.1')),
    expected: true,
  },
  {
    what: 'all 32 groups above 239.1.1.1 modulo 2^23 share it',
    got: () => {
      let count = 0;
      for (let high = 0; high < 32; high++) {
        const address = 0xe0000000 + high * 2 ** 23 + 65_793;
        if (isMulticast(address) && shareHardwareAddress(address, group('239.1.1.1'))) count++;
      }
      return count;
    },
    expected: 32,
  },
]);

published({ source: 'public captures of 224.0.1.129', label: 'second-hand' }, [
  { id: 'W10.6', what: 'low bits', got: () => groupLowBits(group('224.0.1.129')), expected: 385 },
  {
    what: 'hardware address',
    got: () => hardwareAddress(group('224.0.1.129')),
    expected: '01-00-5E-00-01-81',
  },
]);

published({ source: 'RFC 2365 §4, administratively scoped block', label: 'published' }, [
  { what: '239.0.0.0', got: () => isAdministrativelyScoped(group('239.0.0.0')), expected: true },
  { what: '239.255.255.255', got: () => isAdministrativelyScoped(group('239.255.255.255')), expected: true },
  { what: '240.0.0.0', got: () => isAdministrativelyScoped(group('240.0.0.0')), expected: false },
  { what: '238.255.255.255', got: () => isAdministrativelyScoped(group('238.255.255.255')), expected: false },
  { what: '232.0.0.1', got: () => isAdministrativelyScoped(group('232.0.0.1')), expected: false },
  { what: '240.0.0.0 is no group', got: () => isMulticast(group('240.0.0.0')), expected: false },
  { what: '223.255.255.255 is no group', got: () => isMulticast(group('223.255.255.255')), expected: false },
  { what: 'last group', got: () => isMulticast(group('239.255.255.255')), expected: true },
  { what: 'first group', got: () => isMulticast(group('224.0.0.0')), expected: true },
]);

published(
  { source: 'RFC 4541 §2.1.2 (2) with RFC 1112 §6.4: groups that switches flood', label: 'derived' },
  [
    { what: '224.0.0.5', got: () => isFlooded(group('224.0.0.5')), expected: true },
    { what: '239.0.0.5', got: () => isFlooded(group('239.0.0.5')), expected: true },
    { what: '239.128.0.5', got: () => isFlooded(group('239.128.0.5')), expected: true },
    { what: '239.128.0.255', got: () => isFlooded(group('239.128.0.255')), expected: true },
    { what: '239.128.1.0', got: () => isFlooded(group('239.128.1.0')), expected: false },
    { what: '239.10.0.5', got: () => isFlooded(group('239.10.0.5')), expected: false },
  ],
);

published({ source: 'RFC 3376 §8.1-8.4, IGMPv3 defaults', label: 'published' }, [
  { id: 'W10.3', what: 'group membership interval, s', got: () => groupMembership_s(), expected: 260 },
]);

published({ source: 'RFC 791 §3.2, dotted addresses of 32 bits', label: 'published' }, [
  { what: 'highest address', got: () => formatAddress(2 ** 32 - 1), expected: '255.255.255.255' },
  {
    what: '10.20.0.9 as a number',
    got: () => parseAddress('10.20.0.9'),
    expected: 10 * 2 ** 24 + 20 * 2 ** 16 + 9,
  },
]);
