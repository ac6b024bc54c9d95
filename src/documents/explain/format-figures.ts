import { attempt } from '../../analysis/attempt.ts';
import { FormatTable } from '../../analysis/formats.ts';
import type { Analysis, Interface } from '../../analysis/model.ts';
import { flowsThatFit } from '../../physics/capacity.ts';
import { type DisplayClasses, displayClasses, explainTmds } from '../../physics/display-interface.ts';
import { explainFlowLoads, type FlowLoads } from '../../physics/flows.ts';
import { explainActivePayload } from '../../physics/pixel-group.ts';
import { completeFormat, type Format, type PictureFormat, type StatedFormat } from '../../physics/raster.ts';
import { explainSdiRate, type SdiWay, sdiWays } from '../../physics/sdi.ts';
import type { Explained, Working } from '../../physics/working.ts';

/** What a format asks of everything that it could ride on. */
export interface FormatFigures {
  /** On SDI and network; what was left out is filled in. */
  readonly format: Format;
  /** On a display link, where what was left out means something else; undefined for sound alone. */
  readonly displayFormat: PictureFormat | undefined;
  readonly loads: FlowLoads;
  /** Serial rate on SDI; undefined where SDI does not carry it. */
  readonly sdi_bits_per_second: number | undefined;
  readonly sdiWays: readonly SdiWay[];
  /** TMDS character rate on a display link; undefined where none carries it. */
  readonly characterRate_hz: number | undefined;
  /** How it fits every class of display link; undefined where none carries it. */
  readonly displayClasses: DisplayClasses | undefined;
  readonly carriers: readonly Carrier[];
  /** How many go one way through each network interface, up to 100 %. */
  readonly fits: readonly { readonly interface: Interface; readonly count: number }[];
  readonly workings: readonly Working[];
}

/** An interface that is no network, and how the format rides on it. */
export interface Carrier {
  readonly interface: Interface;
  readonly fit: 'fits' | 'doubtful';
}

/**
 * The figures of a format by itself, uncompressed on the network, packed as the plan's settings say.
 *
 * @throws PhysicsError when what was left out makes it a picture that cannot exist.
 */
export function formatFigures(stated: StatedFormat, { settings, interfaces }: Analysis): FormatFigures {
  const { packing, tagged, blanking } = settings;
  const format = completeFormat(stated, 'network');
  const display = completeFormat(stated, 'hdmi');
  const displayFormat = display.kind === 'picture' ? display : undefined;
  const flow = explainFlowLoads(format, { kind: 'uncompressed', packing }, tagged);
  const active = format.kind === 'picture' ? explainActivePayload(format) : undefined;
  const sdi = format.kind === 'picture' ? attempt(() => explainSdiRate(format)) : undefined;
  const tmds = displayFormat && attempt(() => explainTmds(displayFormat, blanking));
  const all = [...interfaces.values()];
  return {
    format,
    displayFormat,
    loads: flow.value,
    sdi_bits_per_second: sdi?.value,
    sdiWays: format.kind === 'picture' ? (attempt(() => sdiWays(format)) ?? []) : [],
    characterRate_hz: tmds?.value,
    displayClasses: displayFormat && attempt(() => displayClasses(displayFormat, blanking)),
    carriers: carriersOf(stated, all, new FormatTable(tagged, blanking)),
    fits: all
      .filter((one) => one.signal === 'network' && one.rate_bits_per_second > 0)
      .map((one) => ({
        interface: one,
        count: flowsThatFit(one.rate_bits_per_second, flow.value.total_bits_per_second),
      })),
    workings: [flow, active, sdi, tmds].flatMap((one: Explained<unknown> | undefined) => one?.working ?? []),
  };
}

function carriersOf(stated: StatedFormat, interfaces: readonly Interface[], table: FormatTable): Carrier[] {
  return interfaces.flatMap((face): Carrier[] => {
    if (face.signal === 'network' || face.signal === 'unknown') return [];
    const known = table.complete(stated, face.signal);
    const misfit = known && table.misfit(known, face);
    if (!known || (misfit && misfit.kind !== 'doubtful')) return [];
    return [{ interface: face, fit: misfit ? 'doubtful' : 'fits' }];
  });
}
