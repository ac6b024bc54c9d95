import { delivered, powerClassOf, poweredDevice, sourced } from '../../src/physics/power-over-ethernet.ts';
import { type Check, published } from './source.ts';

/** Class, type, supply W and V, device W as published; current, loss, device W and V as computed apart from here. */
const CLASSES: readonly (readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
])[] = [
  [0, 1, 15.4, 44, 12.95, 0.35, 2.45, 12.95, 37],
  [1, 1, 4, 44, 3.84, 0.0909, 0.17, 3.83, 42.18],
  [2, 1, 7, 44, 6.49, 0.1591, 0.51, 6.49, 40.82],
  [3, 1, 15.4, 44, 12.95, 0.35, 2.45, 12.95, 37],
  [4, 2, 30, 50, 25.5, 0.6, 4.5, 25.5, 42.5],
  [5, 3, 45, 50, 40, 0.9, 5.06, 39.94, 44.38],
  [6, 3, 60, 50, 51, 1.2, 9, 51, 42.5],
  [7, 4, 75, 52, 62, 1.4423, 13, 62, 42.99],
  [8, 4, 90, 52, 71.3, 1.7308, 18.72, 71.28, 41.18],
];

published(
  { source: 'IEEE 802.3af-2003, 802.3at-2009, 802.3bt-2018, class table', label: 'second-hand' },
  CLASSES.flatMap(([number, type, supply_w, supply_v, device_w]): Check[] => {
    const power = () => powerClassOf(number);
    const arrives = () => delivered(supply_w, supply_v, power().channel_ohm).device_w;
    return [
      { what: `class ${number}: type`, got: () => power().type, expected: type },
      { what: `class ${number}: supply, W`, got: () => power().supply_w, expected: supply_w },
      { what: `class ${number}: least voltage, V`, got: () => power().supply_v, expected: supply_v },
      { what: `class ${number}: device, W`, got: () => power().device_w, expected: device_w },
      {
        what: `class ${number}: computed at the far end, W`,
        got: arrives,
        expected: device_w,
        within: 0.0626,
      },
    ];
  }),
);

published(
  {
    source: 'IEEE 802.3 channel resistance of 20, 12.5 and 6.25 ohm, confirmed by computation',
    label: 'from memory',
  },
  [
    ...CLASSES.flatMap(([number, , supply_w, supply_v, , current_a, loss_w, device_w, device_v]): Check[] => {
      const far = () => delivered(supply_w, supply_v, powerClassOf(number).channel_ohm);
      return [
        {
          what: `class ${number}: current, A`,
          got: () => far().current_a,
          expected: current_a,
          within: 0.000_051,
        },
        {
          what: `class ${number}: lost in the cable, W`,
          got: () => supply_w - far().device_w,
          expected: loss_w,
          within: 0.0051,
        },
        {
          what: `class ${number}: at the device, W`,
          got: () => far().device_w,
          expected: device_w,
          within: 0.0051,
        },
        {
          what: `class ${number}: at the device, V`,
          got: () => far().device_v,
          expected: device_v,
          within: 0.0051,
        },
      ];
    }),
    {
      id: 'W6.1',
      what: '15.4 W at 44 V over 20 ohm, W',
      got: () => delivered(15.4, 44, 20).device_w,
      expected: 12.95,
      within: 0.01,
    },
    {
      id: 'W6.2',
      what: '30 W at 50 V over 12.5 ohm, W',
      got: () => delivered(30, 50, 12.5).device_w,
      expected: 25.5,
      within: 0.01,
    },
    { what: 'the same, V', got: () => delivered(30, 50, 12.5).device_v, expected: 42.5 },
    {
      id: 'W6.3',
      what: '60 W at 50 V over 6.25 ohm, W',
      got: () => delivered(60, 50, 6.25).device_w,
      expected: 51,
      within: 0.05,
    },
    {
      id: 'W6.4',
      what: '90 W at 52 V over 6.25 ohm, W',
      got: () => delivered(90, 52, 6.25).device_w,
      expected: 71.28,
      within: 0.05,
    },
    {
      id: 'W6.5',
      what: '25.5 W over 50 m from 50 V: power that the supply gives, W',
      got: () => sourced(25.5, 50, 6.25).supply_w,
      expected: 27.37,
      within: 0.05,
    },
    {
      what: 'the same as a class 4 device on 50 m, W',
      got: () => poweredDevice(powerClassOf(4), 50).supply_w,
      expected: 27.37,
      within: 0.05,
    },
    {
      what: 'the same, V',
      got: () => poweredDevice(powerClassOf(4), 50).device_v,
      expected: 46.6,
      within: 0.05,
    },
  ],
);

published({ source: 'conductor limit of 9.38 ohm per 100 m, two pairs', label: 'derived' }, [
  {
    what: 'a class 4 channel keeps its 12.5 ohm, which allow for connectors, W',
    got: () => poweredDevice(powerClassOf(4), 100, 25.5, 0.0938).supply_w,
    expected: 30,
    within: 0.05,
  },
]);
