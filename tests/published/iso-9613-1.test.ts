import { soundFlight_s, soundSpeed_m_per_s, soundSpeedByLine_m_per_s } from '../../src/physics/sound.ts';
import { published } from './source.ts';

published({ source: 'ISO 9613-1:1993, speed of sound, in an open acoustics program', label: 'second-hand' }, [
  { what: 'at 20 °C, m/s', got: () => soundSpeed_m_per_s(20), expected: 343.2 },
  { what: 'one metre at 20 °C, ms', got: () => soundFlight_s(1) * 1000, expected: 2.91, within: 0.005 },
  {
    id: 'W7.7',
    what: '20 m at 30 °C, ms',
    got: () => soundFlight_s(20, 30) * 1000,
    expected: 57.31,
    within: 0.1,
  },
]);

published({ source: 'the line 331.3 + 0.606 T m/s', label: 'common practice' }, [
  {
    id: 'W7.3',
    what: '20 m at 20 °C by the line, ms',
    got: () => (20 / soundSpeedByLine_m_per_s(20)) * 1000,
    expected: 58.24,
    within: 0.1,
  },
  {
    what: 'the standard agrees with it, ms',
    got: () => soundFlight_s(20, 20) * 1000,
    expected: 58.24,
    within: 0.1,
  },
  ...[0, 10, 20, 30, 40].map((temperature_c) => ({
    what: `the standard agrees with it at ${temperature_c} °C, m/s`,
    got: () => soundSpeed_m_per_s(temperature_c),
    expected: soundSpeedByLine_m_per_s(temperature_c),
    percent: 0.25,
  })),
]);
