/** Sound on a network: flows of PCM samples (SMPTE ST 2110-30, AES67). */
import { formatRate } from './display.ts';
import { ethernetOctets, IP_UDP_RTP_OCTETS, wireOctets } from './packet-headers.ts';
import { requireWhole } from './physics-error.ts';
import { MOST_AUDIO_CHANNELS } from './raster.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

/** Sound: 48 kHz, 24 bit, packets of 1 ms with 8 channels at most (SMPTE ST 2110-30 level A, second-hand). */
export const SOUND_SAMPLE_RATE_HZ = 48_000;
export const SOUND_DEPTH_BITS = 24;
export const SOUND_PACKETS_PER_SECOND = 1000;
export const CHANNELS_PER_SOUND_FLOW = 8;
export const SOUND_SOURCE: Source = { source: 'SMPTE ST 2110-30 level A, RFC 3190 §4', label: 'second-hand' };

/**
 * Load of one flow of PCM sound on the wire (SMPTE ST 2110-30, AES67): whole samples a packet, 78 octets of headers,
 * preamble and gap, 82 with a VLAN tag.
 *
 * @throws PhysicsError for no channels, or a packet time that holds no whole number of samples.
 */
export function soundFlowLoad_bits_per_second(
  channels: number,
  sample_rate_hz: number = SOUND_SAMPLE_RATE_HZ,
  depth_bits: number = SOUND_DEPTH_BITS,
  packets_per_second: number = SOUND_PACKETS_PER_SECOND,
  tagged = false,
): number {
  const payload = soundPayload_octets(channels, sample_rate_hz, depth_bits, packets_per_second);
  return wireOctets(payload + IP_UDP_RTP_OCTETS, tagged) * 8 * packets_per_second;
}

/** Octets of sound in one packet. @throws PhysicsError as `soundFlowLoad_bits_per_second`. */
export function soundPayload_octets(
  channels: number,
  sample_rate_hz: number = SOUND_SAMPLE_RATE_HZ,
  depth_bits: number = SOUND_DEPTH_BITS,
  packets_per_second: number = SOUND_PACKETS_PER_SECOND,
): number {
  requireWhole('audio', channels, 1, MOST_AUDIO_CHANNELS, 'channels');
  const samples = requireWhole('samples in a packet', sample_rate_hz / packets_per_second, 1, sample_rate_hz);
  return (samples * channels * depth_bits) / 8;
}

/** Load of all sound of a source: as many flows of up to 8 channels as needed. @throws PhysicsError */
export function soundLoad_bits_per_second(channels: number, tagged = false): number {
  requireWhole('audio', channels, 0, MOST_AUDIO_CHANNELS, 'channels');
  const rest = channels % CHANNELS_PER_SOUND_FLOW;
  const full = (channels - rest) / CHANNELS_PER_SOUND_FLOW;
  const load = (count: number) =>
    soundFlowLoad_bits_per_second(count, undefined, undefined, undefined, tagged);
  return (full === 0 ? 0 : full * load(CHANNELS_PER_SOUND_FLOW)) + (rest === 0 ? 0 : load(rest));
}

/** `soundLoad_bits_per_second` with its working. */
export function explainSoundLoad(channels: number, tagged = false): Explained {
  const value = soundLoad_bits_per_second(channels, tagged);
  const rest = channels % CHANNELS_PER_SOUND_FLOW;
  const full = (channels - rest) / CHANNELS_PER_SOUND_FLOW;
  const flows = full + (rest > 0 ? 1 : 0);
  const working = makeWorking({
    figure: `sound, ${channels} channels`,
    rule: `48 kHz, 24 bit, packets of 1 ms, ${CHANNELS_PER_SOUND_FLOW} channels at most in a flow: ${flows} ${flows === 1 ? 'flow' : 'flows'}`,
    formula: flows === 0 ? '' : `${packetFormula(full, rest)} x 8 x 1000`,
    inputs: flows === 0 ? [] : [['overhead', String(IP_UDP_RTP_OCTETS + ethernetOctets(tagged))]],
    result: formatRate(value),
    ...SOUND_SOURCE,
  });
  return { value, working };
}

/** Octets of one packet of every flow: so many full ones, and one for the channels that are left. */
function packetFormula(full: number, rest: number): string {
  const packet = (channels: number) => `(${soundPayload_octets(channels)} + overhead)`;
  const fullOnes = `${full === 1 ? '' : `${full} x `}${packet(CHANNELS_PER_SOUND_FLOW)}`;
  if (rest === 0) return fullOnes;
  return full === 0 ? packet(rest) : `(${fullOnes} + ${packet(rest)})`;
}
