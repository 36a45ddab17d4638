import { it } from 'vitest';
import { airDensity, soundSpeed } from '../../src/lib/acoustics/air.js';
import { close } from '../helpers/close.js';

it('speed of sound: 343.2 m/s at 20 °C (ISO 9613-1:1993, 4.2)', () => {
  close(soundSpeed({ temperatureC: 20 }), 343.2, { rel: 1e-12, because: 'the reference of the formula' });
});

it('speed of sound over temperature: standard tables of dry air (CRC Handbook, values from memory)', () => {
  for (const [temperatureC, c] of [
    [-10, 325.3],
    [0, 331.4],
    [10, 337.3],
    [30, 349.0],
    [40, 354.7]
  ])
    close(soundSpeed({ temperatureC }), c, {
      rel: 1e-3,
      because: `${temperatureC} °C: rounded table, ideal gas`
    });
});

it('density: 1.2929 kg/m³ at 0 °C, 1.2041 at 20 °C, 1.1644 at 30 °C, 101.325 kPa (CRC Handbook, from memory)', () => {
  for (const [temperatureC, rho] of [
    [0, 1.2929],
    [20, 1.2041],
    [30, 1.1644]
  ])
    close(airDensity({ temperatureC }), rho, { rel: 1e-3, because: `${temperatureC} °C: dry air` });
});
