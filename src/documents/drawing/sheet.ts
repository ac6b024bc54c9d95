import type { Naming } from './descriptions.ts';
import { type RibbonScale, ribbonScale } from './measures.ts';
import type { Placement } from './placement.ts';
import type { RibbonLoad, Scene, SceneSituation, Watched } from './scene.ts';
import type { Theme } from './themes.ts';

/** What is drawn: a placed scene in one part of the show, everything by its id. */
export interface Sheet {
  readonly scene: Scene;
  readonly placement: Placement;
  readonly theme: Theme;
  readonly situation: SceneSituation | undefined;
  readonly scale: RibbonScale;
  readonly naming: Naming;
  /** Pictures on each wire. */
  readonly wires: ReadonlyMap<string, readonly number[]>;
  readonly ribbons: ReadonlyMap<string, RibbonLoad>;
  /** What destinations show and what comes to inputs. */
  readonly watched: ReadonlyMap<string, Watched>;
  readonly lost: ReadonlySet<string>;
}

export function makeSheet(scene: Scene, placement: Placement, theme: Theme, segment: string | null): Sheet {
  const situation = scene.situations.find((one) => one.segment === segment) ?? scene.situations[0];
  const { wires = [], ribbons = [], watched = [], arrivals = [], lost = [] } = situation ?? {};
  return {
    scene,
    placement,
    theme,
    situation,
    scale: ribbonScale(scene),
    naming: {
      pictures: new Map(scene.pictures.map((picture) => [picture.number, picture])),
      boxes: new Map(scene.boxes.map(({ id, title }) => [id, title])),
      rooms: new Map(scene.rooms.map(({ id, title }) => [id, title])),
    },
    wires: new Map(wires.map(({ wire, pictures }) => [wire, pictures])),
    ribbons: new Map(ribbons.map((load) => [load.ribbon, load])),
    watched: new Map([...watched, ...arrivals].map((one) => [one.box, one])),
    lost: new Set(lost),
  };
}
