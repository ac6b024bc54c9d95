import { type FrameRate, sameRate, scaleRate } from '../physics/rate.ts';
import type { FormatTable, KnownFormat } from './formats.ts';
import type { Carried, Source, SourceFigures } from './model.ts';
import type { PictureFollower } from './pictures.ts';

/** What each source puts onto the network and onto its own cable. */
export class SourceFigurer {
  readonly #pictures: PictureFollower;
  readonly #formats: FormatTable;
  readonly #usual: Carried;
  readonly #houseRate: FrameRate | undefined;

  constructor(
    pictures: PictureFollower,
    formats: FormatTable,
    usual: Carried,
    houseRate: FrameRate | undefined,
  ) {
    this.#pictures = pictures;
    this.#formats = formats;
    this.#usual = usual;
    this.#houseRate = houseRate;
  }

  figuresOf(source: Source): SourceFigures {
    const known = this.#pictures.first[source.index] ?? asStated(source, this.#formats);
    const carried = this.#pictures.firstFlowOf(source)?.carried ?? source.kit?.carries ?? this.#usual;
    return figuresOf(source, known, carried, this.#formats, this.#houseRate);
  }
}

/** The format of a source that no feed takes anywhere. */
function asStated(source: Source, formats: FormatTable): KnownFormat | undefined {
  if (!source.format) return undefined;
  const port = source.port ?? source.from;
  return formats.complete(
    source.format,
    source.sendsByItself ? 'network' : (port?.interface?.signal ?? 'sdi'),
  );
}

function figuresOf(
  source: Source,
  known: KnownFormat | undefined,
  carried: Carried,
  formats: FormatTable,
  houseRate: FrameRate | undefined,
): SourceFigures {
  const onNetwork = known && formats.carry(known, carried);
  const loads = onNetwork && formats.loads(onNetwork, carried);
  const link = source.link ?? source.from?.links[0];
  const signal = link?.chain.interface?.signal ?? source.port?.interface?.signal ?? 'sdi';
  return {
    source,
    format: known?.format,
    carried,
    active_bits_per_second: loads?.active_bits_per_second,
    packets_per_frame: loads?.packets_per_frame,
    picture_bits_per_second: loads?.picture_bits_per_second,
    sound_bits_per_second: loads?.sound_bits_per_second,
    ancillary_bits_per_second: loads?.ancillary_bits_per_second,
    network_bits_per_second: loads?.total_bits_per_second,
    interface_bits_per_second:
      known && !source.sendsByItself ? formats.onInterface_bits_per_second(known, signal) : undefined,
    rateDiffers: houseRate !== undefined && known !== undefined && !isHouseRate(known, houseRate),
  };
}

/** Interlaced pictures run at the house rate when their frames or their fields do; sound has no rate. */
function isHouseRate({ format }: KnownFormat, houseRate: FrameRate): boolean {
  if (format.kind === 'sound' || sameRate(format.rate, houseRate)) return true;
  return format.scan === 'i' && sameRate(scaleRate(format.rate, 2), houseRate);
}
