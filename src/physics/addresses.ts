/** IPv4 addresses, and the multicast groups that share a hardware address. */
import { type PhysicsError, refusal, requireWhole } from './physics-error.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

export const GROUP_SOURCE: Source = { source: 'RFC 1112 §6.4', label: 'published' };
export const FLOOD_SOURCE: Source = {
  source:
    'RFC 4541 §2.1.2 (2): switches send 224.0.0.x everywhere; groups with the same hardware address go along',
  label: 'derived',
};

/** An IPv4 address as an unsigned number of 32 bits. */
export type Address = number;

/** A block of addresses: its first one, and how many leading bits are common. */
export interface Prefix {
  readonly first: Address;
  readonly bits: number;
}

/** Reads `10.20.0.9`. @throws PhysicsError when it is none */
export function parseAddress(text: string): Address {
  const parts = /^(\d{1,3})\.(\d{1,3})\.(\d{1,3})\.(\d{1,3})$/.exec(text.trim());
  let address = 0;
  for (const part of parts?.slice(1) ?? []) {
    if (Number(part) > 255 || (part.length > 1 && part.startsWith('0'))) throw noAddress(text);
    address = address * 256 + Number(part);
  }
  if (parts === null) throw noAddress(text);
  return address;
}

function noAddress(text: string): PhysicsError {
  return refusal('address', `"${text}"`, 'four numbers from 0 to 255, for example 10.20.0.9');
}

/** `10.20.0.9`. @throws PhysicsError for a number that is no address */
export function formatAddress(address: Address): string {
  requireWhole('address', address, 0, 2 ** 32 - 1);
  return [24, 16, 8, 0].map((shift) => (address >>> shift) & 255).join('.');
}

/**
 * Reads `10.20.0.0/24`; bits behind the prefix must be 0.
 *
 * @throws PhysicsError when it is none, with the prefix that was probably meant
 */
export function parsePrefix(text: string): Prefix {
  const [address = '', length = '', more] = text.trim().split('/');
  if (more !== undefined || !/^\d{1,2}$/.test(length) || Number(length) > 32) {
    throw refusal('prefix', `"${text}"`, 'an address and a number of bits, for example 10.20.0.0/24');
  }
  const bits = Number(length);
  const given = parseAddress(address);
  const first = given - (given % 2 ** (32 - bits));
  if (first !== given)
    throw refusal('prefix', `"${text}"`, `${formatAddress(first)}/${bits}, the start of that block`);
  return { first, bits };
}

/** `10.20.0.0/24` */
export function formatPrefix({ first, bits }: Prefix): string {
  return `${formatAddress(first)}/${bits}`;
}

/** How many addresses a prefix has. */
export function prefixSize({ bits }: Prefix): number {
  return 2 ** (32 - bits);
}

/** True when the address lies in the block. */
export function prefixHolds(prefix: Prefix, address: Address): boolean {
  return address >= prefix.first && address < prefix.first + prefixSize(prefix);
}

/**
 * The nth address that a node can have: from 1, never the first (the network itself) nor the last (all nodes) of
 * the block; undefined when the block is used up. A block of 31 bits has two, one of 32 bits one (RFC 3021).
 *
 * @throws PhysicsError when n is no whole number from 1
 */
export function hostAddress(prefix: Prefix, n: number): Address | undefined {
  requireWhole('number of an address', n, 1, 2 ** 32);
  const size = prefixSize(prefix);
  if (size <= 2) return n <= size ? prefix.first + n - 1 : undefined;
  return n <= size - 2 ? prefix.first + n : undefined;
}

/** True for 224.0.0.0/4. */
export function isMulticast(address: Address): boolean {
  return address >= 0xe0000000 && address <= 0xefffffff;
}

/** True for 239.0.0.0/8, the block for private use (RFC 2365). */
export function isAdministrativelyScoped(address: Address): boolean {
  return address >= 0xef000000 && address <= 0xefffffff;
}

function requireGroup(group: Address): void {
  if (!isMulticast(group)) {
    throw refusal(
      'multicast group',
      formatAddress(group),
      '224.0.0.0 to 239.255.255.255; for plans 239.0.0.0/8',
    );
  }
}

/** The 23 bits of a group that reach the hardware address (RFC 1112 §6.4). @throws PhysicsError for no group */
export function groupLowBits(group: Address): number {
  requireGroup(group);
  return group % 2 ** 23;
}

/** How many groups share each hardware address: 28 - 23 bits are lost (derived from RFC 1112 §6.4). */
export const GROUPS_PER_HARDWARE_ADDRESS = 2 ** (28 - 23);

/** Hardware address of a group, `01-00-5E-0A-00-07` (RFC 1112 §6.4). @throws PhysicsError for no group */
export function hardwareAddress(group: Address): string {
  const low = groupLowBits(group);
  const octets = [0x01, 0x00, 0x5e, low >>> 16, (low >>> 8) & 255, low & 255];
  return octets.map((octet) => octet.toString(16).toUpperCase().padStart(2, '0')).join('-');
}

/** True when switches cannot tell the two groups apart by hardware address. @throws PhysicsError for no group */
export function shareHardwareAddress(a: Address, b: Address): boolean {
  return groupLowBits(a) === groupLowBits(b);
}

/**
 * True when the group lands on a hardware address of 224.0.0.x, which every switch sends to all ports: x.0.0.y and
 * x.128.0.y (derived from RFC 4541 §2.1.2 and RFC 1112 §6.4).
 *
 * @throws PhysicsError for no group
 */
export function isFlooded(group: Address): boolean {
  return groupLowBits(group) < 256;
}

/**
 * The nth group of a block that is fit for a flow: from 1, in order, leaving out the first of the block, flooded ones
 * and those that share a hardware address with an earlier one of the block; undefined when the block is used up.
 *
 * @throws PhysicsError when the block is no multicast block, or n no whole number from 1
 */
export function flowGroup(prefix: Prefix, n: number): Address | undefined {
  requireGroup(prefix.first);
  requireWhole('number of a group', n, 1, 2 ** 32);
  // Beyond 2^23 addresses the hardware addresses repeat; in each such stretch the first 256 are flooded.
  const distinct = Math.min(prefixSize(prefix), 2 ** 23);
  const start = prefix.first % 2 ** 23;
  const leftOut = Math.min(Math.max(256 - start, distinct > 1 ? 1 : 0), distinct);
  return leftOut + n <= distinct ? prefix.first + leftOut + n - 1 : undefined;
}

/** `hardwareAddress` with its working. */
export function explainHardwareAddress(group: Address): Explained<string> {
  const value = hardwareAddress(group);
  const working = makeWorking({
    figure: `hardware address of ${formatAddress(group)}`,
    rule: `the low 23 bits of the group; ${GROUPS_PER_HARDWARE_ADDRESS} groups share each`,
    formula: '01-00-5E-00-00-00 + group modulo 2^23',
    inputs: [['group', formatAddress(group)]],
    result: value,
    ...(isFlooded(group) ? FLOOD_SOURCE : GROUP_SOURCE),
  });
  return { value, working };
}

/** How long a group is kept without a report: robustness x query + response (RFC 3376 §8.4, defaults §8.1-8.3). */
export function groupMembership_s(robustness = 2, query_s = 125, response_s = 10): number {
  return robustness * query_s + response_s;
}
