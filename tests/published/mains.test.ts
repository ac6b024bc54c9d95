import {
  BRANCH_DROP_SHARE,
  breakerFor_a,
  CONDUCTORS_OHM_PER_KM,
  continuousLimit_a,
  continuousLimit_w,
  current_a,
  gauge_ohm_per_km,
  heat_btu_per_hour,
  TOTAL_DROP_SHARE,
  voltageDrop_v,
  warmConductor_ohm_per_km,
} from '../../src/physics/mains.ts';
import { type Check, published } from './source.ts';

published({ source: 'NEC 210.19(A), 210.20(A), public quotations', label: 'second-hand' }, [
  { id: 'W9.1', what: '120 V 20 A, continuous, W', got: () => continuousLimit_w(20, 120), expected: 1920 },
  { id: 'W9.2', what: 'breaker for 13.5 A continuous, A', got: () => breakerFor_a(13.5), expected: 16.875 },
  { what: 'guidance for a branch', got: () => BRANCH_DROP_SHARE, expected: 0.03 },
  { what: 'guidance in all', got: () => TOTAL_DROP_SHARE, expected: 0.05 },
]);

/** Volts, amperes of the breaker; amperes and watts allowed. */
const CIRCUITS: readonly (readonly [number, number, number, number])[] = [
  [120, 15, 12, 1440],
  [120, 20, 16, 1920],
  [208, 30, 24, 4992],
  [230, 16, 12.8, 2944],
];

published({ source: "80 % of the breaker; Ohm's law", label: 'derived' }, [
  ...CIRCUITS.flatMap(([volts, amperes, allowed_a, allowed_w]): Check[] => [
    {
      what: `${volts} V ${amperes} A: allowed, A`,
      got: () => continuousLimit_a(amperes),
      expected: allowed_a,
    },
    {
      what: `${volts} V ${amperes} A: allowed, W`,
      got: () => continuousLimit_w(amperes, volts),
      expected: allowed_w,
    },
  ]),
  {
    id: 'W9.3',
    what: '2000 W at 230 V, power factor 0.95, A',
    got: () => current_a(2000, 230, 0.95),
    expected: 9.15,
    within: 0.01,
  },
  {
    id: 'W9.4',
    what: '30 m, 10 A, 2.5 mm2, V',
    got: () => voltageDrop_v(30, 10, CONDUCTORS_OHM_PER_KM.class2.get(2.5)!),
    expected: 4.446,
    within: 0.01,
  },
  {
    what: 'the same, per cent of 230 V',
    got: () => (voltageDrop_v(30, 10, 7.41) / 230) * 100,
    expected: 1.93,
    within: 0.005,
  },
  { id: 'W9.5', what: '1200 W, BTU/h', got: () => heat_btu_per_hour(1200), expected: 4094, within: 1 },
]);

/** Square millimetres; class 2 and class 5. */
const CONDUCTORS: readonly (readonly [number, number, number])[] = [
  [1.5, 12.1, 13.3],
  [2.5, 7.41, 7.98],
  [4, 4.61, 4.95],
];

published(
  { source: 'IEC 60228 tables, mycableengineering.com and makers, ohm/km at 20 °C', label: 'second-hand' },
  [
    ...CONDUCTORS.flatMap(([area, fixed, flexible]): Check[] => [
      {
        what: `${area} mm2, class 2`,
        got: () => CONDUCTORS_OHM_PER_KM.class2.get(area) ?? 'none',
        expected: fixed,
      },
      {
        what: `${area} mm2, class 5`,
        got: () => CONDUCTORS_OHM_PER_KM.class5.get(area) ?? 'none',
        expected: flexible,
      },
    ]),
    {
      id: 'W9.7',
      what: '2.5 mm2, class 5 at 60 °C (7.98 / 0.862)',
      got: () => warmConductor_ohm_per_km(7.98, 60),
      expected: 9.257,
      within: 0.01,
    },
    {
      what: 'factor at 40 °C',
      got: () => 1 / warmConductor_ohm_per_km(1, 40),
      expected: 0.926,
      within: 0.0005,
    },
    {
      what: 'factor at 60 °C',
      got: () => 1 / warmConductor_ohm_per_km(1, 60),
      expected: 0.862,
      within: 0.0005,
    },
  ],
);

published({ source: 'GNU units 2.22, wire gauge and copper, ohm/km at 20 °C', label: 'published' }, [
  { id: 'W9.6', what: '12 AWG', got: () => gauge_ohm_per_km(12), expected: 5.211, within: 0.005 },
  { what: '14 AWG', got: () => gauge_ohm_per_km(14), expected: 8.29, within: 0.005 },
  { what: '10 AWG', got: () => gauge_ohm_per_km(10), expected: 3.28, within: 0.005 },
]);
