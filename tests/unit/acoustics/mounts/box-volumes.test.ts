import { describe, expect, it } from 'vitest';
import { boxVolumes } from '../../../../src/lib/acoustics/mounts/box-volumes.js';
import { close } from '../../../helpers/close.js';
import { DEMO } from '../../../helpers/demo-installations.js';

describe('boxVolumes', () => {
  it('takes the body from the inside: 42 × 29 × 17 mm less 6.72 cm³', () => {
    const { inside, body, net } = boxVolumes(DEMO['closed box']);
    close(inside * 1e6, 20.706, { rel: 1e-12, because: '4.2 × 2.9 × 1.7 cm' });
    close(body * 1e6, 6.72, { rel: 1e-12, because: 'half of 4 × 2.8 × 1.2 cm' });
    close(net * 1e6, 13.986, { rel: 1e-12, because: 'the difference' });
  });

  it('refuses what is no box', () => {
    expect(() => boxVolumes(DEMO['free air'])).toThrow('only a box has a volume, got a mount of kind free');
  });
});
