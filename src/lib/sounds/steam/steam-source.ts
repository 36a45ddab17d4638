import type { MovingSource } from '../sound-kind.js';
import { renderSteam } from './render-steam.js';
import type { Steam } from './steam.js';
import { STEAM_KIND } from './steam-kind.js';

export const STEAM_SOURCE: MovingSource<Steam> = { ...STEAM_KIND, render: renderSteam };
