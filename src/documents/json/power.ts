import { poweredBy } from '../../analysis/circuit-loads.ts';
import type { CircuitLoad, NetworkPower, Owner, PlacePower, Powering } from '../../analysis/model.ts';
import { figure, number, object, oneOf, orNull, text, type ValueOf, whole } from './schema.ts';

export const poweredByShape = object('What feeds it', {
  kind: oneOf('none: nothing in the plan feeds it', ['circuit', 'network', 'none']),
  name: orNull(text('Name of the circuit, of several the first; or the port of the switch that supplies it')),
});

export function poweredByJson(owner: Owner, powering: Powering): ValueOf<typeof poweredByShape> {
  const { kind, name } = poweredBy(owner, powering);
  return { kind, name: name ?? null };
}

export const circuitShape = object('A mains circuit', {
  name: text('Its name'),
  place: orNull(text('Where its outlet is')),
  from: orNull(text('The circuit that feeds it')),
  load_w: number('What everything draws that is plugged in here or into circuits that it feeds, in watts'),
  limit_w: orNull(number('The greatest continuous load, 80 % of the breaker, in watts')),
  share: orNull(number('Load over limit: 1 is full')),
});

export function circuitJson({ circuit, load_w, limit_w, share }: CircuitLoad): ValueOf<typeof circuitShape> {
  return {
    name: circuit.name,
    place: circuit.place?.name ?? null,
    from: circuit.from?.name ?? null,
    load_w: figure(load_w),
    limit_w: figure(limit_w),
    share: figure(share),
  };
}

export const placePowerShape = object('What is drawn at a place, whatever it is plugged into', {
  place: text('Name of the place'),
  load_w: number('In watts'),
});

export function placePowerJson({ place, load_w }: PlacePower): ValueOf<typeof placePowerShape> {
  return { place: place.name, load_w: figure(load_w) };
}

export const networkPowerShape = object('Something that is fed over its network cable', {
  link: text('Name of the cable'),
  supply: text('The port that supplies it'),
  device: text('Name of what is fed'),
  class: whole('Its power class'),
  supply_w: orNull(number('What the supply really gives for this length, in watts')),
  device_w: number('What arrives at the device, in watts'),
  device_v: orNull(number('Voltage at the device')),
});

export function networkPowerJson(power: NetworkPower): ValueOf<typeof networkPowerShape> {
  return {
    link: power.link.name,
    supply: power.supply.text,
    device: power.device.name,
    class: power.poeClass,
    supply_w: figure(power.supply_w),
    device_w: figure(power.device_w),
    device_v: figure(power.device_v),
  };
}
